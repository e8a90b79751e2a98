// Keeps this design on the device for when there is no net: by a touch, on a host alone, and renewed with its revision.
{
  const place = document.querySelector('[data-keep]')
  const page = location.pathname.replace(/[^/]*$/, '')

  /** @param {string} words */
  const address = (words) => new URL(words, location.href).href
  /** @param {string | undefined} words */
  const addresses = (words) => (words || '').split(' ').filter(Boolean).map(address)

  /**
   * Ask the worker for something, and wait for its answer.
   * @param {ServiceWorker} worker
   * @param {object} wanted
   */
  const asked = (worker, wanted) => new Promise((answer) => {
    const door = new MessageChannel()
    door.port1.onmessage = (event) => answer(event.data)
    worker.postMessage(wanted, [door.port2])
  })

  /** @param {HTMLElement} shown */
  const offer = async (shown) => {
    const { as, files, shared, worker: script } = /** @type {Record<string, string>} */ (shown.dataset)
    const wanted = { does: 'keep', page, as, files: addresses(files), shared: addresses(shared) }
    const button = document.createElement('button')
    const told = document.createElement('p')
    button.type = 'button'
    told.setAttribute('role', 'status')
    shown.append(button, told)

    /** @param {{as?: string, failed?: boolean}} found */
    const say = (found) => {
      button.textContent = found.as ? 'Keep it no longer' : 'Keep this design for when there is no net'
      told.textContent = found.as ? 'Kept on this device.' : found.failed ? 'It could not be kept: there is no room, or no net.' : ''
      button.disabled = false
      button.onclick = () => { act(found.as ? 'drop' : 'keep') }
    }
    /** @param {string} does */
    const act = async (does) => {
      button.disabled = true
      try {
        if (does === 'keep') await navigator.serviceWorker.register(address(script))
        const ready = await navigator.serviceWorker.ready
        say(await asked(/** @type {ServiceWorker} */ (ready.active), { ...wanted, does }))
      } catch (_fault) {
        say({ failed: true })
      }
    }

    const known = await navigator.serviceWorker.getRegistration(address(script)).catch(() => undefined)
    const found = known && known.active ? await asked(known.active, { ...wanted, does: 'tell' }) : {}
    say(found)
    if (found.as && found.as !== as && navigator.onLine) act('keep')
  }

  if (place instanceof HTMLElement && location.protocol !== 'file:' && 'serviceWorker' in navigator) offer(place)
}
