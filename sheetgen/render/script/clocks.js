// The clocks of waits. A clock is the moments between which it ends, so that neither a reload nor a locked phone stops it.

/**
 * Shows the clocks of the waits and, in `told`, all that run; gives what looks at them anew.
 * @param {HTMLElement[]} sections
 * @param {(section: HTMLElement) => string} nameOf
 * @param {Notes} notes
 * @param {() => void} keep
 * @param {HTMLElement} told
 * @param {() => string[][]} onwards links that stand there too
 */
const waitClocks = (sections, nameOf, notes, keep, told, onwards) => {
  const waits = sections.flatMap((section) => {
    const shown = section.querySelector('.run')
    return shown instanceof HTMLElement ? [{ section, shown, name: nameOf(section), state: '', asks: 0 }] : []
  })
  let said = ''

  const look = () => {
    const now = Date.now()
    const running = onwards()
    for (const wait of waits) {
      const ends = notes.clocks[wait.name]
      const state = clockState(ends, now)
      wait.shown.hidden = false
      for (const end of wait.shown.querySelectorAll('[data-end]')) {
        const words = ends ? clockTime(ends[end.getAttribute('data-end') === 'most' ? 1 : 0], now) : ''
        if (end.textContent !== words) end.textContent = words
      }
      for (const part of wait.shown.querySelectorAll('[data-when]')) {
        const asks = part.getAttribute('data-asks')
        const shows = String(part.getAttribute('data-when')).split(' ').includes(state) && (!asks || (asks === 'yes') === wait.asks > now)
        part.toggleAttribute('hidden', !shows)
        // what is done waits for nothing more
        if (shows && ends && notes.at !== DONE && part.tagName === 'P' && !wait.section.classList.contains('here')) running.push([wait.section.id, `${wait.section.dataset.name}. ${part.textContent}`])
      }
      if (wait.state && wait.state !== state && (state === 'soon' || state === 'over') && navigator.vibrate) navigator.vibrate([400, 200, 400])
      wait.state = state
    }
    if (said === String(running)) return
    said = String(running)
    told.hidden = !running.length
    told.replaceChildren(...running.map(([id, words]) => Object.assign(document.createElement('a'), { href: `#${id}`, textContent: words })))
  }

  for (const wait of waits) {
    const { shown, name } = wait
    shown.addEventListener('click', (event) => {
      const button = event.target instanceof Element && event.target.closest('button')
      if (!button) return
      const [least, most] = [shown.dataset.least, shown.dataset.most].map((minutes) => Date.now() + 60000 * Number(minutes))
      // a knuckle stops no clock: it is asked, and where the button lay lies the one that lets the clock run
      wait.asks = button.dataset.asks === 'no' ? Date.now() + 8000 : 0
      if (button.dataset.when === 'off') notes.clocks[name] = [least, most]
      else if (!wait.asks && button.value !== 'runs') delete notes.clocks[name]
      keep()
      look()
      const other = shown.querySelector('button:not([hidden])')
      if (other instanceof HTMLElement) other.focus({ preventScroll: true })
    })
  }
  setInterval(look, 1000)
  document.addEventListener('visibilitychange', look)
  return look
}
