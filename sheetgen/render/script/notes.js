// What a reader leaves on this device of a design: ticks, place, clocks and which cautions were read. Nothing is sent.

/**
 * `as` is the revision of what is kept, `at` the place; ticks by their words, clocks as the moments (ms) between which
 * they end, cautions as they were read.
 * @typedef {{as: string, at: string, ticks: string[], clocks: Record<string, number[]>, read: Record<string, string>}} Notes
 */

// The place of whoever has done all of it; no step is called so.
const DONE = '.'

/**
 * Values by the names of steps, and nothing else: a step may be called `constructor`, which every other object has.
 * @template T
 * @param {[string, T][]} entries
 * @returns {Record<string, T>}
 */
const byName = (entries) => Object.assign(Object.create(null), Object.fromEntries(entries))

/**
 * @param {string} as
 * @returns {Notes}
 */
const noNotes = (as) => ({ as, at: '', ticks: [], clocks: byName([]), read: byName([]) })

/** @param {Notes} notes */
const isNoted = (notes) => Boolean(notes.at || notes.ticks.length + Object.keys(notes.clocks).length + Object.keys(notes.read).length)

/**
 * What is kept under a name, as far as it has the form of notes: whoever wrote there may have been anybody.
 * @param {string} name
 */
const notesKept = (name) => {
  const notes = noNotes('')
  try {
    /** @type {any} */
    const found = Object(JSON.parse(localStorage.getItem(name) || '{}'))
    /** @param {any} value */
    const entries = (value) => /** @type {[string, any][]} */ (Object.entries(Object(value)))
    notes.as = String(found.as || '')
    notes.at = String(found.at || '')
    notes.ticks = [found.ticks || []].flat().map(String)
    notes.clocks = byName(entries(found.clocks).filter(([, ends]) => [ends].flat().length === 2 && ends.every(Number.isFinite)))
    notes.read = byName(entries(found.read))
  } catch (_fault) {
    // what could be read of it is kept
  }
  return notes
}

/**
 * Whether they could be kept: where there is no room, or it is forbidden, they last as long as the page.
 * @param {string} name
 * @param {Notes} notes
 */
const keepNotes = (name, notes) => {
  try {
    if (isNoted(notes)) localStorage.setItem(name, JSON.stringify(notes))
    else localStorage.removeItem(name)
    return true
  } catch (_fault) {
    return false
  }
}

/**
 * A moment as a clock on the wall says it, with its day where that is not today.
 * @param {number} moment
 * @param {number} now
 */
const clockTime = (moment, now) => {
  const today = new Date(moment).toDateString() === new Date(now).toDateString()
  const day = today ? {} : Math.abs(moment - now) < 6 * 864e5 ? { weekday: 'short' } : { day: 'numeric', month: 'short' }
  const form = { ...day, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }
  return new Date(moment).toLocaleString(document.documentElement.lang || undefined, /** @type {any} */ (form))
}

/**
 * @param {number[] | undefined} ends
 * @param {number} now
 */
const clockState = (ends, now) => {
  if (!ends) return 'off'
  const [least, most] = ends
  return now >= most ? 'over' : now >= least ? 'soon' : least === most ? 'at' : 'going'
}
