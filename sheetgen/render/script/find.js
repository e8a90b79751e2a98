// Finds designs in the library: what is looked for stands in the address, and is never written into the page as markup.
{
  const place = document.querySelector('[data-find]')
  const cards = document.querySelector('[data-cards]')
  const others = document.querySelector('[data-pages]')
  const MOST = 60

  /**
   * @typedef {{name: string, title: string, summary: string, said: string, minutes: number, whole: number, date: string,
   *   level: string, heat: string, clays: string[], techniques: string[], needs: string[][], chips: string[][],
   *   picture: (string|number)[], trouble: string, words: string, called: string, tools: string}} Design
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
   * Where the words stand: 0 all in the title, 1 in what is told and made, 2 with the tools, too; 3 one stands nowhere.
   * @param {string[][]} wanted
   * @param {Design} one
   */
  const rank = (wanted, one) => (has(wanted, one.called) ? 0 : has(wanted, one.words) ? 1 : has(wanted, one.words + one.tools) ? 2 : 3)

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
  const design = (row, names) => {
    const [name, title, summary, said, minutes, whole, date, level, heat, techniques, clays, materials, parts, needs, chips, picture, trouble] = row
    /** @type {(kind: string, numbers: number[]) => string[]} */
    const named = (kind, numbers) => numbers.map((number) => names[kind][number])
    return {
      name, title, summary, said, minutes, whole, date, chips, picture, trouble,
      level: names.level[level],
      heat: names.heat[heat],
      techniques: named('technique', techniques),
      clays: named('clay', clays),
      needs: needs.map((/** @type {number[][]} */ [some, tools]) => [...named('clay', some), ...named('tool', tools)]),
      words: formsOf(`${title} ${summary}`) + forms([...named('technique', techniques), ...named('material', materials), ...named('part', parts)]),
      called: formsOf(title),
      tools: forms([...new Set(named('tool', needs.flatMap((/** @type {number[][]} */ [, tools]) => tools)))]),
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
    const words = wordsOf(said('words')).map((word) => [word, ...singular(word)])
    const have = new Set(wanted.getAll('have'))
    const order = ORDERS[said('order')] || ORDERS.name
    /** @type {(name: string, minutes: number) => unknown} */
    const within = (name, minutes) => !Number(said(name)) || (minutes && minutes <= Number(said(name)) * 60)
    return designs
      .filter((one) => (!said('level') || one.level === said('level')) && (!said('heat') || one.heat === said('heat'))
        && (!said('technique') || one.techniques.includes(said('technique'))) && (!said('clay') || one.clays.includes(said('clay')))
        && within('time', one.minutes) && within('whole', one.whole) && rank(words, one) < 3)
      .map((one, place) => ({ one, place, lacking: have.size ? lacks(one, have) : [], idle: have.size ? idle(one, have) : 0, rank: rank(words, one) }))
      .sort((a, b) => a.idle - b.idle || a.lacking.length - b.lacking.length || a.rank - b.rank || order(a.one, b.one) || a.place - b.place)
  }

  /**
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

  /** @param {HTMLElement} shown */
  const offer = (shown) => {
    const home = shown.dataset.home || ''
    let designs = /** @type {Design[]} */ ([])
    let names = /** @type {Record<string, string[]>} */ ({})
    let asked = false
    let most = MOST
    let failed = ''

    const search = /** @type {HTMLInputElement} */ (element('input', { type: 'search', name: 'words', autocomplete: 'off', enterkeyhint: 'search' }))
    const ways = element('div', { class: 'ways in' })
    const drawer = element('div', { class: 'in' })
    const told = element('p', { class: 'found', role: 'status' })
    const list = element('ul', { class: 'cards' })
    const more = element('button', { type: 'button', hidden: '' }, 'Show more')
    const clear = element('button', { type: 'button', hidden: '' }, 'Show all designs')
    const form = /** @type {HTMLFormElement} */ (element('form', { class: 'find', role: 'search' },
      element('label', {}, 'Find', search),
      element('details', {}, element('summary', {}, 'By level, time, technique, clay'), ways),
      element('details', {}, element('summary', {}, 'By what is in the drawer'), drawer),
      clear, told))
    shown.append(form)
    if (cards) cards.after(list, more)

    /**
     * @param {string} label
     * @param {string} name
     * @param {[string, string][]} choices
     */
    const choice = (label, name, choices) => element('label', {}, label,
      element('select', { name }, ...choices.map(([value, words]) => element('option', { value }, words))))
    /** @param {string} kind */
    const sorted = (kind) => (kind === 'level' ? names[kind] : [...names[kind]].sort((a, b) => a.localeCompare(b)))
    /** @param {string} kind */
    const any = (kind) => /** @type {[string, string][]} */ ([['', 'any'], ...sorted(kind).map((name) => [name, name])])
    /**
     * @param {string} kind
     * @param {string} legend
     */
    const ticks = (kind, legend) => element('fieldset', {}, element('legend', {}, legend), element('ul', { class: 'list' },
      ...sorted(kind).map((name) => element('li', {}, element('label', {},
        element('input', { type: 'checkbox', name: 'have', value: name }), element('span', { class: 'what' }, name))))))

    /** @param {Design} one @param {string[]} lacking @param {boolean} ticked */
    const card = (one, lacking, ticked) => {
      const at = `${home}${one.name}/`
      const [source, width, height, webp, drawn] = one.picture
      const image = source ? [element('img', { src: home + (webp || source), width: `${width}`, height: `${height}`, alt: '', loading: 'lazy', class: drawn ? 'to-scale' : '' })] : []
      const few = lacking.slice(0, 6).join(', ') + (lacking.length > 6 ? ` and ${lacking.length - 6} more` : '')
      const chips = one.chips.map(([name, path, pdf]) => element('li', {},
        ...(name ? [element('a', { href: at + path }, name)] : []),
        ...(pdf ? [element('a', { href: at + pdf }, 'PDF', element('span', { class: 'unseen' }, ` of ${one.title}${name ? `, ${name}` : ''}`))] : [])))
      return element('li', { class: 'card' },
        element('a', { class: 'shot', href: `${at}index.html`, tabindex: '-1', 'aria-hidden': 'true' }, ...image),
        element('div', {},
          element('h3', {}, element('a', { href: `${at}index.html` }, one.title)),
          element('p', {}, one.summary),
          element('p', { class: 'note' }, one.said),
          ...[one.trouble && `As it was: its file has been in trouble since ${one.trouble}.`, ticked && (few ? `Lacks: ${few}` : 'Lacks nothing')]
            .map((words) => (words ? element('p', { class: 'note' }, element('b', {}, words)) : '')),
          element('ul', { class: 'chips' }, ...chips)))
    }

    const wanted = () => {
      const said = new URLSearchParams()
      for (const [name, value] of new FormData(form)) if (typeof value === 'string' && value.trim()) said.append(name, value)
      if (said.get('order') === 'name') said.delete('order')
      return said
    }
    const show = () => {
      const said = wanted()
      const plain = !`${said}`
      const each = plain ? [] : found(designs, said)
      list.replaceChildren(...each.slice(0, most).map(({ one, lacking }) => card(one, lacking, said.has('have'))))
      told.textContent = plain || !designs.length ? failed : `${each.length} of ${designs.length} designs`
      more.hidden = each.length <= most
      list.hidden = clear.hidden = plain || !designs.length
      for (const one of [cards, others]) if (one instanceof HTMLElement) one.hidden = !plain && designs.length > 0
    }
    /** Put what an address says into the form; what it says that is no choice of ours is let go. */
    const read = () => {
      const said = new URLSearchParams(location.hash.slice(1) || location.search)
      search.value = said.get('words') || ''
      for (const one of form.querySelectorAll('select')) {
        one.value = said.get(one.name) || one.options[0].value
        if (one.selectedIndex < 0) one.selectedIndex = 0
      }
      const have = new Set(said.getAll('have'))
      for (const one of form.querySelectorAll('input')) if (one.type === 'checkbox') one.checked = have.has(one.value)
      for (const one of form.querySelectorAll('details')) if (one.querySelector('input:checked')) one.open = true
    }
    const note = () => {
      try {
        history.replaceState(null, '', `${location.pathname}${`${wanted()}` ? `#${wanted()}` : ''}`)
      } catch (_fault) { /* too many in a moment for this browser: the next one is noted */ }
    }
    const loaded = () => {
      const library = /** @type {any} */ (window).LIBRARY
      names = library.names
      designs = library.designs.map((/** @type {any[]} */ row) => design(row, names))
      ways.append(
        choice('Level', 'level', any('level')),
        choice('Longest at the bench', 'time', [['', 'any'], ...[1, 2, 3, 5, 8].map((n) => /** @type {[string, string]} */ ([`${n}`, `${n} h`]))]),
        choice('Longest in all, with waits', 'whole', [['', 'any'], ['4', '4 h'], ['8', '8 h'], ['24', 'a day'], ['48', '2 days'], ['96', '4 days'], ['168', 'a week']]),
        choice('Technique', 'technique', any('technique')),
        choice('Clay', 'clay', any('clay')),
        choice('Kiln or torch', 'heat', any('heat')),
        choice('Order', 'order', [['name', 'by name'], ['time', 'shortest at the bench first'], ['whole', 'shortest in all first'], ['newest', 'newest first']]),
      )
      drawer.append(element('p', { class: 'note' }, 'Tick what you have; what needs nothing else comes first. What is used up is not counted.'), ticks('clay', 'Clays'), ticks('tool', 'Tools'))
    }
    const load = () => {
      if (asked) return
      asked = true
      const script = /** @type {HTMLScriptElement} */ (element('script', { src: shown.dataset.find || '' }))
      script.onload = () => {
        const typed = search.value
        loaded()
        read()
        if (typed) search.value = typed
        show()
      }
      script.onerror = () => { failed = 'Finding does not work here; all designs stand below.'; show() }
      document.head.append(script)
    }

    form.addEventListener('focusin', load)
    form.addEventListener('toggle', load, true)
    form.addEventListener('input', () => { most = MOST; show(); note() })
    form.addEventListener('submit', (event) => { event.preventDefault(); show() })
    clear.addEventListener('click', () => { form.reset(); show(); note(); search.focus() })
    more.addEventListener('click', () => { most += MOST; show() })
    addEventListener('hashchange', () => { read(); load(); show() })
    list.hidden = true
    read()
    if (search.value || location.hash.includes('=') || location.search) load()
  }

  if (place instanceof HTMLElement) offer(place)
}
