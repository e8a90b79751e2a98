// A link of the bar to a folded list unfolds it; without this nothing is lost.
addEventListener('click', (event) => {
  const link = event.target instanceof Element ? event.target.closest('.bar a') : null
  const list = link instanceof HTMLAnchorElement ? document.querySelector(link.hash)?.closest('details') : null
  if (list) list.open = true
})
