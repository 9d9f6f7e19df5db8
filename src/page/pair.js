// What runs at the door of the bench: sends the code and the device's name, and goes in. A classic script.

;(() => {
  const form = /** @type {HTMLFormElement} */ (document.getElementById('pair'))
  const said = /** @type {HTMLElement} */ (document.getElementById('said'))
  const code = /** @type {HTMLInputElement} */ (document.getElementById('code'))
  const name = /** @type {HTMLInputElement} */ (document.getElementById('name'))
  const button = /** @type {HTMLButtonElement} */ (form.querySelector('button'))

  /**
   * @param {string} call
   * @param {unknown} body
   */
  const ask = async (call, body) => {
    const response = await fetch(`/api/${call}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    })
    return response.json()
  }

  // What the page says of plain HTTP is not so here.
  if (location.protocol === 'https:') document.getElementById('plain')?.remove()

  const goIn = () => location.replace('/')

  // The code of a picture that was scanned. It stays out of the history, where it would be of no use.
  const fromPicture = decodeURIComponent(location.hash.slice(1))
  if (fromPicture !== '') {
    code.value = fromPicture
    history.replaceState(null, '', location.pathname)
    name.focus()
    name.select()
  } else code.focus()

  ask('door', {}).then(
    ({ ok, value }) => {
      if (ok && value.letIn) goIn()
    },
    () => undefined,
  )

  form.addEventListener('submit', async (event) => {
    event.preventDefault()
    button.disabled = true
    said.textContent = 'Asking…'
    try {
      const answer = await ask('pair', { code: code.value, name: name.value.trim() || 'Phone' })
      if (answer.ok) {
        said.textContent = 'Come in.'
        goIn()
        return
      }
      said.textContent = answer.refusal.sentence
    } catch {
      said.textContent =
        'The bench does not answer. Is it still running, and this device in the same network?'
    }
    button.disabled = false
    code.focus()
    code.select()
  })
})()
