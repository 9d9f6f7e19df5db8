import { nodeEnvironment } from './environment.ts'
import { EXIT } from './exit.ts'
import { run } from './program.ts'

// A reader that has seen enough (`tinwright cans | head`) is no fault; a full disk is.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit()
  console.error(`What was found could not be written: ${error.message}`)
  process.exit(EXIT.internal)
})

process.exitCode = await run(process.argv.slice(2), nodeEnvironment())
