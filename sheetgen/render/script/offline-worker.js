// Keeps the files of a design that somebody asked to keep, for when there is no net; nothing else, and nothing unasked.
'use strict'

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self))
const OURS = 'kept '
const SHARED = `${OURS}by all`

/**
 * The stores of a page, of whatever revision.
 * @param {string} page
 */
const storesOf = async (page) => (await caches.keys()).filter((name) => name.startsWith(`${OURS}${page} `))

/**
 * Fetch files anew into a store: all of them, or none.
 * @param {string} name
 * @param {string[]} files
 */
const fill = async (name, files) => {
  const store = await caches.open(name)
  await store.addAll(files.map((file) => new Request(file, { cache: 'reload' })))
}

/**
 * Keep a page as it is now; what is kept of it stays until all is there.
 * @param {any} wanted
 */
const keep = async (wanted) => {
  const name = `${OURS}${wanted.page} ${wanted.as}`
  const before = (await storesOf(wanted.page)).filter((store) => store !== name)
  try {
    await fill(SHARED, wanted.shared)
    await fill(name, wanted.files)
  } catch (fault) {
    if (before.length) await caches.delete(name)
    throw fault
  }
  await Promise.all(before.map((store) => caches.delete(store)))
}

/** @param {string} page */
const drop = async (page) => {
  await Promise.all((await storesOf(page)).map((store) => caches.delete(store)))
  const left = (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== SHARED)
  if (!left.length) await caches.delete(SHARED)
}

/**
 * Which revision of a page is kept, or nothing.
 * @param {string} page
 */
const keptAs = async (page) => (await storesOf(page)).map((name) => name.slice(`${OURS}${page} `.length)).pop() || ''

/** @param {Request} request */
const kept = async (request) => {
  const address = request.url.replace(/[?#].*$/, '').replace(/\/$/, '/index.html')
  for (const name of (await caches.keys()).filter((one) => one.startsWith(OURS))) {
    const found = await (await caches.open(name)).match(address, { ignoreSearch: true, ignoreVary: true })
    if (found) return found
  }
  return Response.error()
}

worker.addEventListener('install', () => { worker.skipWaiting() })
worker.addEventListener('activate', (event) => { event.waitUntil(worker.clients.claim()) })
worker.addEventListener('fetch', (event) => {
  const { request } = event
  if (request.method !== 'GET' || !request.url.startsWith(worker.registration.scope)) return
  // a page is asked for anew, so that a new revision is seen at once; how long a host lets it stand is any
  const asked = request.mode === 'navigate' ? fetch(request.url, { cache: 'no-cache', redirect: 'manual' }) : fetch(request)
  event.respondWith(asked.catch(() => kept(request)))
})
worker.addEventListener('message', (event) => {
  const { data: wanted, ports: [answer] } = event
  const done = wanted.does === 'keep' ? keep(wanted) : wanted.does === 'drop' ? drop(wanted.page) : Promise.resolve()
  event.waitUntil(done.then(() => keptAs(wanted.page)).then(
    (as) => answer.postMessage({ as }),
    () => answer.postMessage({ failed: true }),
  ))
})
