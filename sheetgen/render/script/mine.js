// What the drawer on this device has is said in the list of what is needed. The ticks there stay as the reader left them.
{
  /**
   * A name without its blanks: on a page numbers are held to their units by others than in the stock.
   * @param {string} name
   */
  const bare = (name) => name.replace(/[\s\u2060]+/g, '')

  /** @param {HTMLElement} needed */
  const say = (needed) => {
    const have = new Set([...drawerKept(needed.dataset.drawer || '')].map(bare))
    for (const one of document.querySelectorAll('.mine')) one.remove()
    const rows = /** @type {HTMLElement[]} */ ([...needed.querySelectorAll('[data-own]')]).filter((row) => have.has(bare(row.dataset.own || '')))
    /** @param {Element | null | undefined} within @param {string} words */
    const put = (within, words) => within && within.append(Object.assign(document.createElement('span'), { className: 'mine', textContent: words }))
    for (const row of rows) put(row, 'in your drawer')
    if (rows.length) put(needed.closest('details')?.querySelector('summary'), `, ${rows.length} in your drawer`)
  }
  const needed = document.querySelector('[data-drawer]')
  if (needed instanceof HTMLElement) addEventListener('pageshow', () => say(needed))
}
