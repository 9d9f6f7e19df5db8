import type { Command } from 'commander'
import { bench } from './commands/bench.ts'
import { devices } from './commands/devices.ts'
import { workshop } from './commands/workshop.ts'
import type { Environment } from './environment.ts'
import type { ExitCode } from './exit.ts'

const JSON_ANSWER = ['--json', 'for programs'] as const
const PLACE = ['--workshop <place>', 'file of the workshop, or postgres://… of a club'] as const

/** What is kept, the bench that shows it, and who of the house may see it. */
export const withWorkshopCommands = (
  program: Command,
  env: Environment,
  ended: (code: ExitCode) => void,
): void => {
  program
    .command('workshop')
    .description(
      'what is kept: list it, export all of it into one archive or one thing into a file, import either',
    )
    .argument('<task>', 'task: list, export or import')
    .argument('[file]', 'archive (.zip); to import also a file of a stove, a shelf or a trial')
    .option(
      '--only <name>',
      'with export: one stove or trial, by its name or id; or shelf, for cans and bits',
    )
    .option(...PLACE)
    .option(...JSON_ANSWER)
    .action(async (task, file, options) => ended(await workshop(env, task, file, options)))
  program
    .command('bench')
    .description('the bench in the browser, on this machine; with --lan also for devices that are let in')
    .option('--port <number>', 'port to listen at; the next free one when it is in use', '4300')
    .option('--lan', 'open to the house: each device is let in by a code, once')
    .option(
      '--certificate <file>',
      'with --lan: speak https to the house; PEM, with those that signed it behind it',
    )
    .option('--key <file>', 'the private key of the certificate; PEM, without a passphrase')
    .option(
      '--name <name>',
      'name by which devices call this machine, where the certificate has a * in its own',
    )
    .option(...PLACE)
    .option('--no-open', 'do not open the browser')
    .option(...JSON_ANSWER)
    .action(async (options) => ended(await bench(env, options)))
  program
    .command('devices')
    .description('devices of the house that were let in to the bench: list them, or let one in no longer')
    .argument('[task]', 'task: list or revoke', 'list')
    .argument('[device]', 'name or id of a device')
    .option(...PLACE)
    .option(...JSON_ANSWER)
    .action(async (task, device, options) => ended(await devices(env, task, device, options)))
}
