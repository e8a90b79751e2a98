// What a search in the library finds: nothing of the page is read or written here.

/**
 * @typedef {{name: string, title: string, summary: string, said: string, minutes: number, whole: number, date: string,
 *   level: string, heat: string, clays: string[], techniques: string[], needs: string[][], chips: string[][],
 *   picture: (string|number)[], trouble: string, codes: string, words: string, called: string, all: string}} Design
 */

const LIKE = /** @type {Record<string, string>} */ ({ ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l', đ: 'd', ð: 'd', þ: 'th', ı: 'i' })
/**
 * The words of a text, without capitals and accents.
 * @param {string} text
 */
const wordsOf = (text) => text.toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '')
  .replace(/[ßæœøłđðþı]/g, (sign) => LIKE[sign]).split(/[^\p{L}\p{N}]+/u).filter(Boolean)

/**
 * What a word may be the plural of.
 * @param {string} word
 */
const singular = (word) => {
  if (word.length < 4) return []
  if (word.endsWith('ies')) return [`${word.slice(0, -3)}y`, word.slice(0, -1)]
  if (word.endsWith('ves')) return [`${word.slice(0, -3)}f`, word.slice(0, -1), `${word.slice(0, -3)}fe`]
  if (/(ch|sh|ss|x|z)es$/.test(word)) return [word.slice(0, -2)]
  return /[^siu]s$/.test(word) ? [word.slice(0, -1)] : []
}

/**
 * The words that are looked for, each with what it may be the plural of; `no kiln` is one thing where a tag says it.
 * @param {string} text
 */
const wantedWords = (text) => wordsOf(text).map((word, at, all) => [word, ...singular(word), ...(all[at - 1] === 'no' ? [`no${word}`] : [])])

/** @param {string} text */
const formsOf = (text) => ` ${wordsOf(text).flatMap((word) => [word, ...singular(word)]).join(' ')}`
const known = /** @type {Map<string, string>} */ (new Map())
/**
 * Of names that many designs have: each is taken apart once.
 * @param {string[]} many
 */
const forms = (many) => many.map((name) => {
  const had = known.get(name) ?? formsOf(name)
  known.set(name, had)
  return had
}).join('')

/**
 * Where the words stand: 0 all in the title, or the one word is the code of a sheet, 1 in what is told and made, 2 with the tools, too; 3 one stands nowhere.
 * @param {string[][]} wanted
 * @param {Design} one
 */
const rank = (wanted, one) => (has(wanted, one.called) || (wanted.length === 1 && one.codes.split(' ').includes(wanted[0][0])) ? 0 : has(wanted, one.words) ? 1 : has(wanted, one.all) ? 2 : 3)

/**
 * Whether each word that is looked for begins one of these.
 * @param {string[][]} wanted
 * @param {string} words
 */
const has = (wanted, words) => wanted.every((any) => any.some((one) => words.includes(` ${one}`)))

/**
 * @param {any[]} row
 * @param {Record<string, string[]>} names
 * @returns {Design}
 */
const designOf = (row, names) => {
  const [name, title, summary, said, minutes, whole, date, level, heat, techniques, clays, materials, parts, needs, chips, picture, trouble, codes] = row
  /** @type {(kind: string, numbers: number[]) => string[]} */
  const named = (kind, numbers) => numbers.map((number) => names[kind][number])
  const tags = named('technique', techniques).map((tag) => tag.replace(/^no (?=\S)/i, 'no no'))
  const words = formsOf(`${title} ${summary}`) + forms([...tags, ...named('material', materials), ...named('part', parts)])
  return {
    name, title, summary, said, minutes, whole, date, chips, picture, trouble, codes,
    level: names.level[level],
    heat: names.heat[heat],
    techniques: named('technique', techniques),
    clays: named('clay', clays),
    needs: needs.map((/** @type {number[][]} */ [some, metals, tools]) => [...named('clay', some), ...named('metal', metals), ...named('tool', tools)]),
    words,
    called: formsOf(title),
    all: words + forms([...new Set(named('tool', needs.flatMap((/** @type {number[][]} */ [, , tools]) => tools)))]),
  }
}

/**
 * What a design lacks, of the version that lacks least; whether it lacks something and uses nothing that is there.
 * @param {Design} one
 * @param {Set<string>} have
 */
const idle = (one, have) => Number(one.needs.every((need) => need.length && !need.some((name) => have.has(name))))
/**
 * @param {Design} one
 * @param {Set<string>} have
 */
const lacks = (one, have) => one.needs.map((need) => need.filter((name) => !have.has(name)))
  .reduce((least, now) => (now.length < least.length ? now : least), one.needs.length ? one.needs[0].concat('') : [])

const ORDERS = /** @type {Record<string, (a: Design, b: Design) => number>} */ ({
  name: () => 0,
  time: (a, b) => (a.minutes || Infinity) - (b.minutes || Infinity) || 0,
  whole: (a, b) => (a.whole || Infinity) - (b.whole || Infinity) || 0,
  newest: (a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0),
})

/**
 * Designs that are wanted, in their order, each with what it lacks.
 * @param {Design[]} designs
 * @param {URLSearchParams} wanted
 */
const found = (designs, wanted) => {
  /** @param {string} name */
  const said = (name) => wanted.get(name) || ''
  const words = wantedWords(said('words'))
  const have = new Set(wanted.getAll('have'))
  const order = ORDERS[said('order')] || ORDERS.name
  /** @type {(name: string, minutes: number) => unknown} */
  const within = (name, minutes) => !Number(said(name)) || (minutes && minutes <= Number(said(name)) * 60)
  return designs
    .filter((one) => (!said('level') || one.level === said('level')) && (!said('heat') || one.heat === said('heat'))
      && (!said('technique') || one.techniques.includes(said('technique'))) && (!said('clay') || one.clays.includes(said('clay')))
      && within('time', one.minutes) && within('whole', one.whole))
    .map((one, place) => ({ one, place, rank: rank(words, one) }))
    .filter((each) => each.rank < 3)
    .map((each) => ({ ...each, lacking: have.size ? lacks(each.one, have) : [], idle: have.size ? idle(each.one, have) : 0 }))
    .sort((a, b) => a.idle - b.idle || a.lacking.length - b.lacking.length || a.rank - b.rank || order(a.one, b.one) || a.place - b.place)
}

/**
 * What a search would be with one word or one choice less, each with what was taken off and how many designs it finds.
 * @param {Design[]} designs
 * @param {URLSearchParams} wanted
 */
const withoutOne = (designs, wanted) => {
  /** @type {(name: string, value: string) => URLSearchParams} */
  const but = (name, value) => {
    const less = new URLSearchParams(wanted)
    if (value) less.set(name, value)
    else less.delete(name)
    return less
  }
  const words = (wanted.get('words') || '').split(/\s+/).filter(Boolean)
  const offers = words.map((word, at) => ({ name: 'words', value: word, less: but('words', words.filter((_, n) => n !== at).join(' ')) }))
  for (const name of ['level', 'time', 'whole', 'technique', 'clay', 'heat']) {
    const value = wanted.get(name)
    if (value) offers.push({ name, value, less: but(name, '') })
  }
  return offers.map((one) => ({ ...one, many: found(designs, one.less).length })).filter((one) => one.many)
}

/**
 * An element with its attributes and what stands in it: words stay words, whoever wrote them.
 * @param {string} kind
 * @param {Record<string, string>} told
 * @param {...(Node|string)} within
 */
const element = (kind, told, ...within) => {
  const made = document.createElement(kind)
  for (const [name, value] of Object.entries(told)) made.setAttribute(name, value)
  made.append(...within)
  return made
}
