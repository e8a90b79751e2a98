// Where a device keeps what a reader leaves there. Pages of a disk may share one storage, so each name has its whole way.

/**
 * Of one version of a design: the ticks, the place and the clocks, whatever units its page is in.
 * @param {string} path
 */
const benchStore = (path) => `bench ${path.replace(/[^/]*$/, '')}`

/**
 * The way of the folder of a library, from how its pages lead up to it.
 * @param {string} home
 */
const libraryAt = (home) => new URL(home || '.', location.href).pathname.replace(/[^/]*$/, '')

/**
 * What is in the drawer by the names of the stock, as far as it is names: whoever wrote there may have been anybody.
 * @param {string} home
 */
const drawerKept = (home) => {
  try {
    const found = JSON.parse(localStorage.getItem(`drawer ${libraryAt(home)}`) || '[]')
    return new Set(Array.isArray(found) ? found.map(String) : [])
  } catch (_fault) {
    return new Set(/** @type {string[]} */ ([]))
  }
}

/**
 * Whether it could be kept.
 * @param {string} home
 * @param {Set<string>} have
 */
const keepDrawer = (home, have) => {
  try {
    if (have.size) localStorage.setItem(`drawer ${libraryAt(home)}`, JSON.stringify([...have]))
    else localStorage.removeItem(`drawer ${libraryAt(home)}`)
    return true
  } catch (_fault) {
    return false
  }
}
