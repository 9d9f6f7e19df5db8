// Installs the checkout from its lock file when that has not been done yet. Runs before the npm
// scripts, on whatever Node the machine has, so this file asks for nothing newer than Node 14.
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)

if (major < 20 || (major === 20 && minor < 19)) {
  console.error(
    `Tinwright needs Node 20.19 or newer to set itself up; this is Node ${process.versions.node}. ` +
      'Install a newer Node (https://nodejs.org) and run the command again.',
  )
  process.exitCode = 1
} else {
  import('./setup/setUp.mjs')
    .then(({ setUp }) => setUp(new URL('..', import.meta.url)))
    .catch((error) => {
      console.error(error.name === 'SetUpFailed' ? error.message : error)
      process.exitCode = 1
    })
}
