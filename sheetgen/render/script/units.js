// Which unit was chosen last is kept on this device, and a page in another leads there; without it nothing is lost.
{
  const KEPT = 'units of the bench'

  /** @param {HTMLAnchorElement} link */
  const lead = (link) => { location.replace(link.href + location.hash) }

  /** @param {HTMLElement} units */
  const remember = (units) => {
    units.addEventListener('click', (event) => {
      const link = event.target instanceof Element ? event.target.closest('a') : null
      if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return
      try {
        localStorage.setItem(KEPT, link.dataset.unit || '')
      } catch (forbidden) { /* or full: the link leads there all the same */ }
      event.preventDefault()
      lead(link)
    })
    try {
      const kept = localStorage.getItem(KEPT)
      const link = [...units.querySelectorAll('a')].find((one) => one.dataset.unit === kept)
      if (link) lead(link)
    } catch (forbidden) { /* nothing is remembered */ }
  }

  const units = document.querySelector('[data-units]')
  if (units instanceof HTMLElement) remember(units)
}
