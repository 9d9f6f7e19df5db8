import type { Command } from 'commander'
import { burns } from './commands/burns.ts'
import { compare } from './commands/compare.ts'
import { predicted } from './commands/predicted.ts'
import { trial } from './commands/trial.ts'
import type { Environment } from './environment.ts'
import type { ExitCode } from './exit.ts'

/** What burns say: one by one, against each other, against the model; and the order to burn in. */
export const withTrialCommands = (
  program: Command,
  env: Environment,
  ended: (code: ExitCode) => void,
): void => {
  program
    .command('trial')
    .description('how a stove really burnt: metrics with uncertainty, and how each was worked out')
    .argument('[file...]', 'trial files, or trials that were exported, as CSV or JSON')
    .option('--brief', 'without how it was worked out')
    .option('--export <file>', 'hand the trials on whole, as .csv or .json')
    .option('--table <file>', 'metrics as numbers, a burn a row, as CSV')
    .option('--sheet', 'an empty sheet to fill in at the stove instead, as PDF')
    .option('--paper <name>', 'paper of the sheet: A4 or Letter', 'A4')
    .option('--name <stove>', 'name of the stove, for the sheet')
    .option('--out <folder>', 'where to put the sheet', 'out')
    .option('--date <day>', 'day the sheet bears, e.g. 2031-05-17 (today when left out)')
    .option('--json', 'for programs')
    .action(async (files, options) => ended(await trial(env, files, options)))
  program
    .command('compare')
    .description('did the change help, or was it luck: variants compared by their trials')
    .argument('<file...>', 'trial files, or trials that were exported')
    .option('--against <variant>', 'variant the others are held against; the first by name if left out')
    .option('--question <metric>', 'metric it is about, e.g. timeToBoil, efficiency, specificFuelT')
    .option('--margin <share>', 'smallest difference that matters', '5 %')
    .option('--confidence <share>', 'of the intervals', '95 %')
    .option(
      '--method <name>',
      'welch, tukey, games-howell, dunnett-t3 or blocked; if left out, the one that suits how it was burnt',
    )
    .option('--no-mishaps', 'leave out burns in which something went wrong')
    .option('--all', 'every other metric as well')
    .option('--json', 'for programs')
    .action((files, options) => ended(compare(env, files, options)))
  program
    .command('burns')
    .description('before testing: the order to burn variants in, drawn by lot')
    .argument('<variant...>', 'names of the variants, the stove as it is among them')
    .option('--rounds <number>', 'how often each is burnt', '3')
    .option('--seed <number>', 'seed of the lot; the day if left out')
    .option('--json', 'for programs')
    .action((variants, options) => ended(burns(env, variants, options)))
  program
    .command('predicted')
    .description('was the prediction right: trials beside their predicted burns, with bands')
    .argument('<file...>', 'trial files, or trials that were exported')
    .option('--stove <file>', 'stove file of all of them; else the one each trial names')
    .option('--bands <sets>', 'sets of coefficients that the bands are drawn from; 0 for no bands', '48')
    .option('--json', 'for programs')
    .action((files, options) => ended(predicted(env, files, options)))
}
