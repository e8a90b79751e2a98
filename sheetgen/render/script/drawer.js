// The drawer: what somebody has, ticked off in short lists, and kept on this device.
// What a hand ticks is kept as it is ticked. What came with an address is not, until somebody says so: it may be of another.

/**
 * Its part of the form; `changed` is called where a button, and no hand on a box, has ticked.
 * @param {string} home
 * @param {() => void} changed
 */
const drawer = (home, changed) => {
  const FEW = 8
  const narrow = /** @type {HTMLInputElement} */ (element('input', { type: 'search', autocomplete: 'off', enterkeyhint: 'done' }))
  const none = element('p', { class: 'note', role: 'status', hidden: '' }, 'Nothing is called so.')
  const told = element('b', { role: 'status' })
  const [take, keep, clear, back] = ['', '', 'Clear the drawer', ''].map((words) => element('button', { type: 'button', hidden: '' }, words))
  const first = element('ul', { class: 'list' })
  const have = /** @type {HTMLDetailsElement} */ (element('details', {}, element('summary', {}, 'Ticked'), first))
  const groups = element('div', {})
  const within = element('div', { class: 'in drawer' },
    element('p', { class: 'note' }, 'Tick what you have. Designs that need nothing else come first. Clay, wire and sheet count however little there is; stones, findings and the like do not.'),
    element('p', {}, told), element('div', { class: 'deeds' }, take, keep, clear, back),
    element('label', {}, 'Narrow the lists', narrow), none, have, groups)
  const summary = element('summary', {}, 'By what is in the drawer')
  const fold = /** @type {HTMLDetailsElement} */ (element('details', {}, summary, within))
  /** @typedef {{row: HTMLElement, box: HTMLInputElement, words: string, name: string, list: HTMLElement}} Thing */
  let things = /** @type {Thing[]} */ ([])
  let folds = /** @type {{fold: HTMLDetailsElement, many: HTMLElement, own: Thing[]}[]} */ ([])
  let kept = true
  // what was cleared, until the page is left
  let gone = /** @type {string[]} */ ([])

  const ticked = () => things.filter(({ box }) => box.checked)
  /** What is kept, of what this library names. */
  const mine = () => {
    const have = drawerKept(home)
    return things.filter(({ name }) => have.has(name))
  }
  const look = () => {
    const [now, own] = [ticked(), mine()]
    const same = now.length === own.length && now.every((one) => own.includes(one))
    told.textContent = now.length || own.length ? `${now.length} ticked${!kept ? '; this device keeps nothing' : now.length && same ? ', kept on this device' : ''}` : ''
    take.hidden = same || !own.length
    take.textContent = `Use my drawer: ${own.length}`
    keep.hidden = same || !now.length
    keep.textContent = own.length ? `Keep these ${now.length} instead` : 'Keep these on this device'
    clear.hidden = !(now.length + own.length) || (!same && now.length * own.length > 0)
    back.hidden = !gone.length
    back.textContent = `Put them back: ${gone.length}`
    const many = things.length ? own.length : drawerKept(home).size
    summary.textContent = `By what is in the drawer${many ? `: ${many} kept${now.length ? '' : ', not in use'}` : ''}`
    for (const { many: said, own: all } of folds) {
      const some = all.filter(({ box }) => box.checked).length
      said.textContent = some ? `${some} of ${all.length}` : `${all.length}`
    }
  }
  /**
   * What is ticked comes first, at once where it is little, and what the words leave out goes. Never while a box is
   * touched, so that none moves away.
   */
  const arrange = () => {
    const words = wantedWords(narrow.value)
    for (const { row, box, words: own, list } of things) {
      (box.checked ? first : list).append(row)
      row.hidden = !has(words, own)
    }
    const some = ticked()
    have.hidden = !some.some(({ row }) => !row.hidden)
    have.open = words.length > 0 || some.length <= FEW
    for (const { fold: one, own } of folds) {
      const left = own.filter(({ row, box }) => !row.hidden && !box.checked)
      one.hidden = !left.length
      one.open = words.length > 0 && left.length > 0
    }
    none.hidden = !things.length || things.some(({ row }) => !row.hidden)
    look()
  }
  /** @param {Set<string>} have */
  const put = (have) => {
    for (const { box, name } of things) box.checked = have.has(name)
    arrange()
  }
  /** @type {(names: Record<string, any>) => void} */
  const fill = (names) => {
    /** @type {(title: string, listed: string[], printed?: string[]) => void} */
    const group = (title, listed, printed = listed) => {
      const list = element('ul', { class: 'list' })
      const many = element('span', { class: 'many' })
      const own = listed.map((name, at) => {
        const box = /** @type {HTMLInputElement} */ (element('input', { type: 'checkbox', name: 'have', value: name }))
        const row = element('li', {}, element('label', {}, box, element('span', { class: 'what' }, printed[at])))
        return { row, box, name, list, shown: printed[at], words: formsOf(`${name} ${printed[at]}`) }
      }).sort((a, b) => a.shown.localeCompare(b.shown, undefined, { numeric: true }))
      if (!own.length) return
      folds.push({ fold: /** @type {HTMLDetailsElement} */ (element('details', {}, element('summary', {}, `${title} `, many), list)), many, own })
      things.push(...own)
    }
    group('Clays', names.clay)
    group('Wire and sheet', names.metal, names.printed)
    const places = names.place.length ? names.place : ['']
    places.forEach((/** @type {string} */ place, /** @type {number} */ at) => {
      group(place ? `Tools: ${place}` : 'Tools', names.tool.filter((/** @type {string} */ _, /** @type {number} */ tool) => names.placed[tool] === at))
    })
    groups.append(...folds.map((one) => one.fold))
  }
  within.addEventListener('input', (event) => {
    if (event.target === narrow) {
      event.stopPropagation()
      arrange()
    } else if (event.target instanceof HTMLInputElement) {
      const have = drawerKept(home)
      if (event.target.checked) have.add(event.target.value)
      else have.delete(event.target.value)
      kept = keepDrawer(home, have)
      // the first tick of a hand uses all that is kept: else two drawers would be told apart by nobody
      if (event.target.checked && ticked().length < 2) for (const { box } of mine()) box.checked = true
      look()
    }
  })
  /** @type {(button: HTMLElement, deed: () => void) => void} */
  const touched = (button, deed) => button.addEventListener('click', () => {
    deed()
    arrange()
    changed()
    narrow.focus({ preventScroll: true })
  })
  touched(take, () => put(drawerKept(home)))
  touched(keep, () => { kept = keepDrawer(home, new Set(ticked().map(({ name }) => name))) })
  touched(clear, () => {
    gone = [...new Set([...ticked(), ...mine()].map(({ name }) => name))]
    kept = keepDrawer(home, new Set())
    put(new Set())
  })
  touched(back, () => {
    const all = new Set([...gone, ...drawerKept(home)])
    gone = []
    kept = keepDrawer(home, all)
    put(all)
  })
  return { fold, fill, put }
}
