// A drawing or picture on the whole screen: by a touch, a click or Enter, and back by the same or by Escape.
{
  const large = document.querySelector('dialog.large')
  const place = large && large.querySelector('div')

  /** @param {Element} one */
  const enlarge = (one) => {
    const seen = one.querySelector('svg, picture, img')
    if (!(large instanceof HTMLDialogElement) || !place || !seen) return
    const copy = /** @type {Element} */ (seen.cloneNode(true))
    for (const part of copy.querySelectorAll('[sizes]')) part.setAttribute('sizes', '100vw')
    place.className = one.classList.contains('wide') ? 'wide' : ''
    place.replaceChildren(copy)
    large.showModal()
  }

  if (large instanceof HTMLDialogElement && 'showModal' in large) {
    large.addEventListener('click', () => large.close())
    for (const one of document.querySelectorAll('main .drawn, main figure picture, main .picture')) {
      const title = one.querySelector('title')
      const image = one.querySelector('img')
      one.setAttribute('tabindex', '0')
      one.setAttribute('role', 'button')
      one.setAttribute('aria-label', `${large.dataset.label} ${title ? title.textContent : image ? image.alt : ''}`)
      one.addEventListener('click', () => enlarge(one))
      one.addEventListener('keydown', (event) => {
        if (!(event instanceof KeyboardEvent) || event.key !== 'Enter' && event.key !== ' ') return
        event.preventDefault()
        enlarge(one)
      })
    }
  }
}
