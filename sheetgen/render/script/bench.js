// The bench view: one step a screen, its cautions before it. It only shows and hides what stands in the page, and where
// anything goes wrong the page is as it was.

/** @param {HTMLElement} main */
const benchView = (main) => {
  const { classList: state } = document.body
  /**
   * A part of the page; of a theme that has none, a button that nobody sees.
   * @param {string} what
   * @param {ParentNode} [within]
   */
  const need = (what, within = main) => /** @type {HTMLElement | null} */ (within.querySelector(what)) || document.createElement('button')

  /** @param {(Element | null)[]} parts */
  const said = (...parts) => parts.map((one) => one ? one.textContent : '').join(' ').replace(/\s+/g, ' ').trim()
  const [where, next, back, read, close, start] = ['.where span', '.turn .next', '.turn .back', '.read', '.where button', '.go'].map((what) => need(what))
  const [news, unkept, clear] = ['.news', '.unkept', '.clear'].map((what) => need(what))
  const sections = /** @type {HTMLElement[]} */ ([...main.querySelectorAll('[data-step]')])
  const screens = [...main.querySelectorAll('#safety'), ...sections].map((one) => /** @type {HTMLElement} */ (one))
  const boxes = /** @type {HTMLInputElement[]} */ ([...main.querySelectorAll('input[type=checkbox]')])
  const [began, onwards] = [start.textContent, next.textContent]
  const [toLeft, toRight] = document.dir === 'rtl' ? ['back', 'next'] : ['next', 'back']

  // A step is known by its title, so that it is found again where others come before it.
  const names = new Map()
  for (const screen of screens) {
    let name = screen.dataset.name || ''
    while (names.has(name)) name += '+'
    names.set(name, screen)
    screen.dataset.known = name
  }
  /** @param {Element | null} screen */
  const nameOf = (screen) => screen instanceof HTMLElement && screen.dataset.known || ''
  /** @param {Element} box */
  const tickOf = (box) => `${nameOf(box.closest('[data-step]'))} ${said(box.closest('label'))}`

  // What is kept, and of which revision.
  const store = benchStore(location.pathname)
  const notes = noNotes(need('[data-edition]').dataset.edition || '')
  const found = notesKept(store)
  let asks = isNoted(found) && found.as !== notes.as
  if (!asks) Object.assign(notes, found, { as: notes.as })

  const keep = () => {
    if (!asks) unkept.hidden = keepNotes(store, notes)
    clear.hidden = !isNoted(notes)
  }
  /** @returns {HTMLElement | undefined} */
  const place = () => names.get(notes.at)
  /** @param {HTMLElement} there */
  const onTo = (there) => [start.dataset.on, there.dataset.no, there.dataset.name].filter(Boolean).join(' ')
  /** @type {HTMLElement | undefined} */
  let here
  // What comes after a screen, in as few words as go on the button; a session that must wait is not led on to in silence.
  const nextTold = () => {
    if (!here) return
    const after = screens[screens.indexOf(here) + 1]
    const session = after?.previousElementSibling?.matches('.session') ? after.previousElementSibling.querySelector('span')?.firstChild : null
    const waits = session && here.querySelector('.run') && !['soon', 'over'].includes(clockState(notes.clocks[nameOf(here)], Date.now()))
    const told = (after ? `${onwards}: ${session?.textContent?.trim() || after.dataset.no || next.dataset.wait}` : next.dataset.end || '') + (waits && next.dataset.after || '')
    if (next.textContent !== told) next.textContent = told
  }
  // Where somebody looks at another step than that of the place, the place is one touch away.
  const look = waitClocks(sections, nameOf, notes, keep, need('.clocks'), () => {
    nextTold()
    const there = here && !state.contains('reads') && place()
    return there && there !== here ? [[there.id, onTo(there)]] : []
  })
  const shown = () => {
    const there = place()
    for (const box of boxes) box.checked = notes.ticks.includes(tickOf(box))
    start.textContent = there ? onTo(there) : notes.at === DONE ? start.dataset.done || began : began
    news.hidden = !asks
    clear.hidden = !isNoted(notes)
    look()
  }
  /** @param {Notes} all */
  const become = (all) => {
    asks = false
    Object.assign(notes, all, { as: notes.as })
    keep()
    shown()
  }

  // Cautions that stand in full are read before anything after them is seen.
  /** @param {HTMLElement} screen */
  const cautions = (screen) => said(...screen.querySelectorAll('.warning .one'))
  /** @param {HTMLElement} target */
  const unread = (target) => screens.slice(0, screens.indexOf(target) + 1).find((one) => cautions(one) && notes.read[nameOf(one)] !== cautions(one))

  /** @type {{release: () => void} | undefined} */
  let awake
  const stayAwake = async () => {
    try {
      if (awake) return
      awake = await /** @type {any} */ (navigator).wakeLock.request('screen')
      if (!here && awake) awake.release()
    } catch (_fault) {
      awake = undefined
    }
  }

  const unshow = () => {
    if (!here) return
    need('.title', here).removeAttribute('aria-level')
    here.classList.remove('here')
    if (here instanceof HTMLDetailsElement) here.open = false
    here = undefined
  }
  const leave = () => {
    unshow()
    state.remove('at-bench', 'reads')
    if (awake) awake.release()
    awake = undefined
  }
  /** @param {HTMLElement} target */
  const show = (target) => {
    const toRead = unread(target)
    const screen = toRead || target
    const after = screens[screens.indexOf(screen) + 1]
    unshow()
    here = screen
    if (screen instanceof HTMLDetailsElement) screen.open = true
    where.textContent = screen.dataset.at || ''
    need('.read span').textContent = said(...screen.querySelectorAll('.one strong'))
    read.onclick = () => {
      notes.read[nameOf(screen)] = cautions(screen)
      keep()
      // what was read is done with: the first step comes, or the step's own words stand at the top
      if (screen !== target) show(target)
      else if (screen === screens[0] && after && !screen.dataset.step) turn('next', true)
      else {
        show(target)
        const over = need('.warning', screen).getBoundingClientRect().bottom
        scrollTo(0, Math.max(0, scrollY + over - 8))
      }
    }
    screen.classList.add('here')
    state.toggle('reads', Boolean(toRead))
    state.add('at-bench')
    back.toggleAttribute('disabled', screen === screens[0])
    const title = need('.title, summary', screen)
    if (title.matches('.title')) {
      title.tabIndex = -1
      title.setAttribute('aria-level', '2')
    }
    title.focus({ preventScroll: true })
    scrollTo(0, 0)
    stayAwake()
    look()
  }
  /** @param {() => void} deed */
  const safely = (deed) => {
    try {
      deed()
    } catch (fault) {
      leave()
      throw fault
    }
  }
  /** @param {string} hash */
  const address = (hash) => {
    try {
      history.replaceState(null, '', hash || location.pathname + location.search)
    } catch (_fault) {
      // a place where the address stands as it is: the view goes on
    }
  }
  const shut = () => {
    address('')
    leave()
    shown()
    scrollTo(0, 0)
    start.focus({ preventScroll: true })
  }
  // The place goes with whoever works on, and not with whoever looks at a clock or follows a link.
  /** @param {string} at */
  const placed = (at) => {
    notes.at = at
    keep()
  }
  /** @param {string} way @param {boolean} [isRead] */
  const turn = (way, isRead) => {
    if (!here) return
    const on = screens[screens.indexOf(here) + (way === 'next' ? 1 : -1)]
    if (way === 'next' && !isRead && state.contains('reads')) read.focus()
    else if (on) {
      placed(nameOf(on))
      address(`#${on.id}`)
      show(on)
    } else if (way === 'next') {
      placed(DONE)
      shut()
    }
  }
  const follow = () => {
    const target = screens.find((screen) => `#${screen.id}` === location.hash)
    if (target) show(target)
    else if (here) shut()
  }

  /** @param {HTMLElement} button @param {() => void} deed */
  const touched = (button, deed) => button.addEventListener('click', (event) => {
    event.preventDefault()
    safely(deed)
  })
  touched(next, () => turn('next'))
  touched(back, () => turn('back'))
  touched(close, shut)
  // a knuckle clears nothing: it is asked for a while, and where the button lay lies the one that keeps
  let asked = 0
  /** @param {boolean} asks */
  const ask = (asks) => {
    clearTimeout(asked)
    asked = asks ? setTimeout(ask, 8000, false) : 0
    for (const one of clear.querySelectorAll('[data-asks]')) one.toggleAttribute('hidden', asks !== (one.getAttribute('data-asks') === 'yes'))
  }
  clear.addEventListener('click', (event) => {
    const button = event.target instanceof Element && event.target.closest('button')
    if (!button) return
    ask(button.dataset.asks === 'no')
    if (button.value) safely(() => become(noNotes('')))
    else need('button:not([hidden])', clear).focus({ preventScroll: true })
  })
  touched(start, () => {
    if (notes.at === DONE) become(noNotes(''))
    const target = place() || screens[0]
    if (location.hash === `#${target.id}`) show(target)
    else location.hash = target.id
  })
  touched(need('.news .anew'), () => become({ ...notes }))
  touched(need('.news .same'), () => become({ ...found, ticks: found.ticks.concat(notes.ticks) }))
  main.addEventListener('change', (event) => {
    if (!(event.target instanceof HTMLInputElement)) return
    const tick = tickOf(event.target)
    notes.ticks = notes.ticks.filter((one) => one !== tick).concat(event.target.checked ? tick : [])
    placed(event.target.checked && nameOf(event.target.closest('[data-step]')) || notes.at)
  })
  addEventListener('hashchange', () => safely(follow))
  // where the page lay before it was loaded again, what has to be told first may be out of sight
  addEventListener('load', () => here && scrollTo(0, 0))
  document.addEventListener('visibilitychange', () => {
    awake = undefined
    if (here && document.visibilityState === 'visible') stayAwake()
  })

  /** @param {EventTarget | null} target */
  const scrolls = (target) => target instanceof Element && Boolean(target.closest('.wide, dialog'))
  addEventListener('keydown', (event) => {
    if (!here || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey || scrolls(event.target)) return
    if (event.key === 'ArrowRight') safely(() => turn(toLeft))
    if (event.key === 'ArrowLeft') safely(() => turn(toRight))
    if (event.key === 'Escape') safely(shut)
  })
  /** @type {Touch | undefined} */
  let finger
  addEventListener('touchstart', (event) => {
    const enlarged = window.visualViewport && window.visualViewport.scale > 1.05
    finger = event.touches.length > 1 || enlarged || scrolls(event.target) ? undefined : event.touches[0]
  }, { passive: true })
  addEventListener('touchend', (event) => {
    if (!here || !finger || event.touches.length) return
    const { clientX, clientY } = event.changedTouches[0]
    const [along, down] = [clientX - finger.clientX, clientY - finger.clientY]
    if (Math.abs(along) > 60 && Math.abs(along) > 2 * Math.abs(down)) safely(() => turn(along < 0 ? toLeft : toRight))
  }, { passive: true })

  shown()
  safely(follow)
}

{
  const main = document.querySelector('main')
  try {
    if (main && main.querySelector('.turn')) benchView(main)
  } catch (fault) {
    // the page stands as it is, and what comes after this runs
    console.error(fault)
  }
}
