// Finds designs in the library: what is looked for stands in the address, and is never written into the page as markup.
{
  const place = document.querySelector('[data-find]')
  const cards = document.querySelector('[data-cards]')
  const others = document.querySelector('[data-pages]')
  const MOST = 60

  /** @param {HTMLElement} shown */
  const offer = (shown) => {
    const home = shown.dataset.home || ''
    let designs = /** @type {Design[]} */ ([])
    let names = /** @type {Record<string, string[]>} */ ({})
    let printed = /** @type {Map<string, string>} */ (new Map())
    let asked = false
    let most = MOST
    let failed = ''

    const search = /** @type {HTMLInputElement} */ (element('input', { type: 'search', name: 'words', autocomplete: 'off', enterkeyhint: 'search' }))
    const ways = element('div', { class: 'ways in' })
    const begun = element('section', { class: 'begun' })
    // only the first page of all tells it; what is kept may be another when a reader comes back to it
    const tellBegun = () => begun.replaceChildren(...(home || !designs.length ? [] : begunList(home, notesBegun(home), designs)))
    const had = drawer(home, () => changed())
    const told = element('p', { class: 'found', role: 'status', tabindex: '-1' })
    const fewer = element('ul', { class: 'sheets fewer' })
    const list = element('ul', { class: 'cards' })
    const more = element('button', { type: 'button', hidden: '' }, 'Show more')
    const clear = element('button', { type: 'button', hidden: '' }, 'Show all designs')
    const form = /** @type {HTMLFormElement} */ (element('form', { class: 'find', role: 'search' },
      element('label', {}, 'Find', search), told, fewer,
      element('details', {}, element('summary', {}, 'By level, time, technique, clay'), ways),
      had.fold,
      clear))
    shown.append(begun, form)
    addEventListener('pageshow', tellBegun)
    document.addEventListener('visibilitychange', tellBegun)
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
    /** @param {Design} one @param {string[]} lacking @param {boolean} ticked */
    const card = (one, lacking, ticked) => {
      const at = `${home}${one.name}/`
      const [source, width, height, webp, drawn] = one.picture
      const image = source ? [element('img', { src: home + (webp || source), width: `${width}`, height: `${height}`, alt: '', loading: 'lazy', class: drawn ? 'to-scale' : '' })] : []
      const few = lacking.slice(0, 6).map((name) => printed.get(name) || name).join('; ') + (lacking.length > 6 ? `; and ${lacking.length - 6} more` : '')
      const chips = one.chips.map(([name, folder, pdf]) => element('li', {},
        ...(name ? [element('a', { href: `${at}${folder}index.html` }, name)] : []),
        ...(pdf ? [element('a', { href: at + folder + pdf }, 'PDF', element('span', { class: 'unseen' }, ` of ${one.title}${name ? `, ${name}` : ''}`))] : [])))
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
    /**
     * Where nothing is found: what there would be without one of the things that are asked for.
     * @param {URLSearchParams} said
     */
    const offerLess = (said) => withoutOne(designs, said).map(({ name, value, less, many }) => {
      const choice = form.querySelector(`select[name=${name}]`)
      const words = choice instanceof HTMLSelectElement ? choice.options[choice.selectedIndex].text : value
      const button = element('button', { type: 'button' }, `Without ‘${words}’: ${many}`)
      button.addEventListener('click', () => {
        put(less)
        changed()
        const next = told.textContent ? told : search
        next.focus({ preventScroll: true })
      })
      return element('li', {}, button)
    })
    const show = () => {
      const said = wanted()
      const plain = !`${said}`
      const each = plain ? [] : found(designs, said)
      list.replaceChildren(...each.slice(0, most).map(({ one, lacking }) => card(one, lacking, said.has('have'))))
      told.textContent = plain || !designs.length ? failed : `${each.length} of ${designs.length} designs${said.has('have') ? ', by the drawer' : ''}`
      fewer.replaceChildren(...(plain || each.length || !designs.length ? [] : offerLess(said)))
      more.hidden = each.length <= most
      list.hidden = clear.hidden = plain || !designs.length
      for (const one of [cards, others]) if (one instanceof HTMLElement) one.hidden = !plain && designs.length > 0
    }
    /**
     * Put what an address says into the form; what it says that is no choice of ours is let go. What is set is unfolded.
     * @param {URLSearchParams} said
     */
    const put = (said) => {
      search.value = said.get('words') || ''
      for (const one of form.querySelectorAll('select')) {
        one.value = said.get(one.name) || one.options[0].value
        if (one.selectedIndex < 0) one.selectedIndex = 0
      }
      had.put(new Set(said.getAll('have')))
      const set = [...form.querySelectorAll('select')].some((one) => one.selectedIndex > 0)
      for (const one of /** @type {NodeListOf<HTMLDetailsElement>} */ (form.querySelectorAll(':scope > details'))) if (one.querySelector('input:checked') || (set && one.contains(ways))) one.open = true
    }
    const read = () => put(new URLSearchParams(location.hash.slice(1) || location.search))
    const note = () => {
      try {
        history.replaceState({ most }, '', `${location.pathname}${`${wanted()}` ? `#${wanted()}` : ''}`)
      } catch (_fault) { /* too many in a moment for this browser: the next one is noted */ }
    }
    const changed = () => {
      most = MOST
      show()
      note()
    }
    const loaded = () => {
      const library = /** @type {any} */ (window).LIBRARY
      names = library.names
      printed = new Map(names.metal.map((name, at) => [name, names.printed[at]]))
      designs = library.designs.map((/** @type {any[]} */ row) => designOf(row, names))
      ways.append(
        choice('Level', 'level', any('level')),
        choice('Longest at the bench', 'time', [['', 'any'], ...[1, 2, 3, 5, 8].map((n) => /** @type {[string, string]} */ ([`${n}`, `${n} h at the bench`]))]),
        choice('Longest in all, with waits', 'whole', [['', 'any'], ...[['4', '4 h'], ['8', '8 h'], ['24', 'a day'], ['48', '2 days'], ['96', '4 days'], ['168', 'a week']].map(([hours, words]) => /** @type {[string, string]} */ ([hours, `${words} in all`]))]),
        choice('Technique', 'technique', any('technique')),
        choice('Clay', 'clay', any('clay')),
        choice('Kiln or torch', 'heat', any('heat')),
        choice('Order', 'order', [['name', 'by name'], ['time', 'shortest at the bench first'], ['whole', 'shortest in all first'], ['newest', 'newest first']]),
      )
      had.fill(names)
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
        tellBegun()
      }
      script.onerror = () => { failed = 'Finding does not work here; all designs stand below.'; show() }
      document.head.append(script)
    }

    form.addEventListener('focusin', load)
    form.addEventListener('toggle', load, true)
    form.addEventListener('input', changed)
    form.addEventListener('submit', (event) => { event.preventDefault(); show() })
    clear.addEventListener('click', () => { put(new URLSearchParams()); changed(); search.focus() })
    more.addEventListener('click', () => { most += MOST; show(); note() })
    addEventListener('hashchange', () => { read(); load(); show() })
    list.hidden = true
    if (Number.isInteger(history.state?.most)) most = Math.max(MOST, history.state.most)
    read()
    if ((!home && notesBegun(home).size) || search.value || location.hash.includes('=') || location.search) load()
  }

  if (place instanceof HTMLElement) offer(place)
}
