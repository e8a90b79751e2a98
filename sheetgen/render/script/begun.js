// What was begun on this device, on the library's first page: read from what the bench view keeps, by the same names.

/**
 * The names under which something is kept of a design of this library, with the notes.
 * @param {string} home
 */
const notesBegun = (home) => {
  const own = benchStore(libraryAt(home))
  const found = /** @type {Map<string, Notes>} */ (new Map())
  try {
    for (const name of Object.keys(localStorage)) {
      const notes = name.startsWith(own) ? notesKept(name) : noNotes('')
      if (isNoted(notes) && notes.at !== DONE) found.set(name, notes)
    }
  } catch (_fault) {
    // forbidden here, and so nothing is kept
  }
  return found
}

/**
 * What each clock that runs says, in the words that the page of a design has for it, which stand in this page too.
 * @param {Record<string, number[]>} clocks
 */
const clocksTold = (clocks) => Object.entries(clocks).flatMap(([step, ends]) => {
  const now = Date.now()
  const words = /** @type {HTMLTemplateElement | null} */ (document.querySelector('[data-clocks]'))
  const part = words && words.content.querySelector(`p[data-when=${clockState(ends, now)}]`)
  if (!part) return []
  for (const end of part.querySelectorAll('b')) end.textContent = clockTime(ends[Number(end.dataset.end === 'most')], now)
  return [`${titleOf(step)}. ${part.textContent}`]
})

/**
 * A step is known by its title, and one that is called as another before it by a + more.
 * @param {string} step
 */
const titleOf = (step) => step.replace(/\++$/, '')

const AT_ONCE = 4
/**
 * The list of it, what is over folded; nothing where none of what is kept is of a design that stands here.
 * @param {string} home
 * @param {Map<string, Notes>} begun
 * @param {Design[]} designs
 */
const begunList = (home, begun, designs) => {
  const rows = designs.flatMap(({ name, title, chips }) => (chips.length ? chips : [['', '']]).flatMap(([version, folder]) => {
    const at = `${home}${name}/${folder}`
    const notes = begun.get(benchStore(new URL(at, location.href).pathname))
    if (!notes) return []
    const step = titleOf(notes.at)
    const words = [element('u', {}, version ? `${title}, ${version}` : title), ...[step ? `Go on: ${step}` : 'Go on', ...clocksTold(notes.clocks)].map((told) => element('span', { class: 'note' }, told))]
    return [element('li', {}, element('a', { href: `${at}index.html` }, ...words))]
  }))
  const [first, over] = [rows.slice(0, AT_ONCE), rows.slice(AT_ONCE)].map((some) => element('ul', { class: 'listed' }, ...some))
  return [
    ...(rows.length ? [element('h2', {}, 'Begun on this device'), first] : []),
    ...(rows.length > AT_ONCE ? [element('details', {}, element('summary', {}, `${rows.length - AT_ONCE} more`), over)] : []),
  ]
}
