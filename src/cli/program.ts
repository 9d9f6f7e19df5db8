import { Command, CommanderError } from 'commander'
import { BadInput, type Problem, problemSentence } from '#basis/problem.ts'
import { wrap } from '#compose/page/text.ts'
import { built } from './commands/built.ts'
import { burn } from './commands/burn.ts'
import { cans } from './commands/cans.ts'
import { cards } from './commands/cards.ts'
import { check } from './commands/check.ts'
import { fitting } from './commands/fit.ts'
import { guides } from './commands/guides.ts'
import { logger } from './commands/logger.ts'
import { plan } from './commands/plan.ts'
import { predict } from './commands/predict.ts'
import { sheets } from './commands/sheets.ts'
import { shop } from './commands/shop.ts'
import { solids } from './commands/solids.ts'
import { steps } from './commands/steps.ts'
import { templates } from './commands/templates.ts'
import { withConditions, withSite } from './conditions.ts'
import type { Environment } from './environment.ts'
import { EXIT, type ExitCode } from './exit.ts'
import { withTrialCommands } from './trialCommands.ts'
import { usageProblem } from './usage.ts'
import { withWorkshopCommands } from './workshopCommands.ts'

const EPILOGUE =
  'Every command takes --json, for programs. It ends with 0 when all is well; 1 when the answer is not a good one: stops or warnings, a stove that cannot be made, a burn that is not clean or none at all, a comparison that tells nothing, a prediction that is wrong; 2 when a file or an option will not do, and then nothing is written; 3 when Tinwright itself broke.'

/** What many commands take, in the same words. */
const STOVE = ['<stove>', 'stove file'] as const
const SHELF = ['--shelf <file>', 'shelf file: which bits and cans there are'] as const
const BANDS = [
  '--bands <sets>',
  'sets of coefficients that the bands are drawn from; 0 for no bands',
] as const
const OUT = ['--out <folder>', 'where to put the files', 'out'] as const
const JSON_ANSWER = ['--json', 'for programs'] as const
const dayOf = (what: 'pages' | 'plan' | 'cards') =>
  [
    '--date <day>',
    `day the ${what} ${what === 'plan' ? 'bears' : 'bear'}, e.g. 2031-05-17 (today when left out)`,
  ] as const

/** An option that may be given more than once. */
const also = (value: string, before: readonly string[] = []): readonly string[] => [...before, value]

const programFor = (env: Environment, ended: (code: ExitCode) => void): Command => {
  const program = new Command('tinwright')
    .description('From the shelf of cans to the published plan: wood-gas stoves out of salvaged cans.')
    .version(env.version, '--version', 'say the version')
    .helpOption('-h, --help', 'say what it does')
    .helpCommand('help [command]', 'say what a command does')
    .exitOverride()
    // Narrow terminals too.
    .configureHelp({ minWidthToWrap: 10 })
    .configureOutput({
      writeOut: env.out,
      writeErr: env.err,
      // What is wrong with the words of a command is said in one place, `usageProblem`.
      outputError: () => undefined,
      getOutHelpWidth: () => env.width,
      getErrHelpWidth: () => env.width,
    })
    .addHelpText('after', `\n${wrap(EPILOGUE, env.width)}`)

  program
    .command('check')
    .description('what will not work, what will disappoint, and what to do instead')
    .argument(...STOVE)
    .option(...SHELF)
    .option(...JSON_ANSWER)
    .action((file, options) => ended(check(env, file, options)))
  withConditions(
    program
      .command('predict')
      .description('how it will burn: air through every row, firepower, burn time, regime, with bands')
      .argument(...STOVE),
  )
    .option(...BANDS, '64')
    .option(...JSON_ANSWER)
    .action((file, options) => ended(predict(env, file, options)))
  withConditions(
    program
      .command('burn')
      .description(
        'how it will burn from lighting to the last char: firepower, boils, walls, wind, with bands',
      )
      .argument(...STOVE),
  )
    .option(
      '--damper <turn>',
      'turn the damper: "10 min: 12 deg", or "boil: 12 deg" when 1 L boils; may be given again',
      also,
    )
    .option('--hot', 'a second batch, in a stove still hot from the first')
    .option('--no-lid', 'no lid on the pot')
    .option('--skirt <gap x height>', 'a skirt round the pot, e.g. "8 mm x 60 mm"')
    .option('--pot <diameter>', 'another pot than the file says, e.g. "150 mm"')
    .option('--new-tin', 'bright cans that have not been burnt off')
    .option('--trip <plan>', 'fuel for a trip, e.g. "3 days, 2 boils, 0.5 L"')
    .option(...BANDS, '48')
    .option('--figure <file>', 'the burn over time, as SVG')
    .option('--series <file>', 'the burn step by step, as CSV')
    .option(...JSON_ANSWER)
    .action((file, options) => ended(burn(env, file, options)))
  program
    .command('templates')
    .description('drilling templates at true size, as a PDF to print, as SVG or as DXF')
    .argument(...STOVE)
    .option('--paper <name>', 'A4, Letter or A3, for the PDF', 'A4')
    .option('--as <format>', 'pdf, svg, dxf or all', 'pdf')
    .option(...OUT)
    .option(...dayOf('pages'))
    .option(...JSON_ANSWER)
    .action(async (file, options) => ended(await templates(env, file, options)))
  program
    .command('plan')
    .description('the whole plan to hand on: a PDF with templates at true size, and one page for a screen')
    .argument(...STOVE)
    .option('--paper <name>', 'paper of the PDF, as for templates', 'A4')
    .option('--shelf <file>', 'shelf file: what is there already, and which bits would do instead')
    .option('--author <name>', 'who publishes it')
    .option('--licence <terms>', 'under what terms, e.g. "CC BY-SA 4.0"')
    .option(...BANDS, '48')
    .option(...dayOf('plan'))
    .option(...OUT)
    .option(...JSON_ANSWER)
    .action(async (file, options) => ended(await plan(env, file, options)))
  program
    .command('solids')
    .description('every part as a closed solid, in millimetres, for a 3-D program or a printer')
    .argument(...STOVE)
    .option('--as <format>', 'stl or 3mf', '3mf')
    .option('--arrangement <which>', 'whole, cut, exploded, packed or parts', 'whole')
    .option('--chord <length>', 'how far a facet may lie inside of what is round', '0.02 mm')
    .option(...OUT)
    .option(...JSON_ANSWER)
    .action(async (file, options) => ended(await solids(env, file, options)))
  program
    .command('guides')
    .description('drill guides to print: collars for rows of holes, centring discs for floors and bores')
    .argument(...STOVE)
    .option('--as <format>', 'stl or 3mf', 'stl')
    .option('--part <name>', 'for one part only')
    .option('--bit <which>', 'pilot, or full for the bit of each hole’s own size', 'pilot')
    .option('--pilot <diameter>', 'the pilot bit, e.g. "1/8 in"', '3 mm')
    .option('--clearance <length>', 'left free on the diameter, for the printer', '0.3 mm')
    .option('--wall <length>', 'how much of the bit the guide holds', '8 mm')
    .option('--bed <width x depth>', 'room on the printer; a third length is its height', '220 mm x 220 mm')
    .option(...OUT)
    .option(...JSON_ANSWER)
    .action(async (file, options) => ended(await guides(env, file, options)))
  program
    .command('cards')
    .description('cards for a video or a post: the whole stove and every part, and its sizes to read aloud')
    .argument(...STOVE)
    .option('--out <folder>', 'where to put them', 'out')
    .option('--shape <name>', 'wide (16 : 9), square or both', 'both')
    .option('--as <format>', 'svg, png or both', 'both')
    .option('--theme <name>', 'light or dark', 'light')
    .option(...BANDS, '48')
    .option(...dayOf('cards'))
    .option(...JSON_ANSWER)
    .action(async (file, options) => ended(await cards(env, file, options)))
  program
    .command('shop')
    .description('what to find and in which order to cut and drill: cans, bits, schedule, fasteners, time')
    .argument(...STOVE)
    .option(...SHELF)
    .option(...JSON_ANSWER)
    .action((file, options) => ended(shop(env, file, options)))
  program
    .command('steps')
    .description('how to build it, step by step: what to do, what to measure, a picture of each')
    .argument(...STOVE)
    .option('--out <folder>', 'where to put the pictures, as SVG')
    .option(...JSON_ANSWER)
    .action((file, options) => ended(steps(env, file, options)))
  withSite(
    program
      .command('built')
      .description('the stove as it was built: plan beside measure, and what that does to the prediction')
      .argument(...STOVE)
      .argument('[sheet]', 'as-built file: what was measured'),
  )
    .option('--blank', 'write the empty as-built file instead, to be filled in')
    .option('--out <file>', 'where to write the stove as built, or the empty sheet')
    .option(...JSON_ANSWER)
    .action((file, sheet, options) => ended(built(env, file, sheet, options)))
  withSite(
    program
      .command('sheets')
      .description('sheets to fill in by hand, as a PDF: one burn, and the stove as built')
      .argument(...STOVE),
  )
    .option('--paper <name>', 'A4, Letter or A3', 'A4')
    .option('--out <folder>', 'where to put the PDF', 'out')
    .option(...dayOf('pages'))
    .option(...JSON_ANSWER)
    .action(async (file, options) => ended(await sheets(env, file, options)))
  program
    .command('logger')
    .description('readings of a logger of temperatures or a scale: how they are read, what they show')
    .argument('<file>', 'logger file: CSV or any text with a line for each moment')
    .option('--mapping <file>', 'read it as was kept, instead of proposing how')
    .option('--save-mapping <file>', 'keep how it is read, for the next file of this logger')
    .option('--answer <what=choice>', 'answer to what is asked; may be given again', also)
    .option('--trial <file>', 'trial that the readings belong to: brings both clocks together')
    .option('--match <event=moment>', 'when an event of the trial was, by the logger’s clock; again', also)
    .option('--part <number>', 'which part is the trial’s, where the clock began anew')
    .option('--water <channel>', 'which channel is the water, where more than one boils')
    .option('--boiling-point <value>', 'of water where it was burnt, e.g. "98.4 °C"')
    .option('--csv <file>', 'the readings as understood: points, °C and g, outliers named')
    .option(...JSON_ANSWER)
    .action((file, options) => ended(logger(env, file, options)))
  program
    .command('cans')
    .description('size codes and what they measure')
    .argument('[name...]', 'a size code or a trade name: 404x700, "No. 10"; none lists the table')
    .option(...JSON_ANSWER)
    .action((names, options) => ended(cans(env, names, options)))
  program
    .command('fit')
    .description('does this can go into that one; what goes into what; how small a stove packs')
    .argument('[what...]', 'two cans (size code or trade name), or one stove file')
    .option('--shelf <file>', 'every can of a shelf with every other')
    .option(...JSON_ANSWER)
    .action((what, options) => ended(fitting(env, what, options)))
  withWorkshopCommands(program, env, ended)
  withTrialCommands(program, env, ended)
  return program
}

const say = (env: Environment, problems: readonly Problem[], json: boolean): void => {
  if (json) {
    env.out(`${JSON.stringify({ problems }, null, 2)}\n`)
    return
  }
  for (const problem of problems) env.err(`${wrap(problemSentence(problem), env.width, '', '  ')}\n`)
}

/** Runs one command. Everything it touches is in `env`; it never ends the process itself. */
export const run = async (args: readonly string[], env: Environment): Promise<ExitCode> => {
  let code: ExitCode = EXIT.fine
  const program = programFor(env, (ended) => {
    code = ended
  })
  if (args.length === 0) {
    program.outputHelp({ error: true })
    return EXIT.badInput
  }
  try {
    await program.parseAsync([...args], { from: 'user' })
    return code
  } catch (error) {
    // Help and version end here too.
    if (error instanceof CommanderError && error.exitCode === 0) return EXIT.fine
    const json = args.includes('--json')
    if (error instanceof CommanderError) {
      say(env, [usageProblem(error, program, args)], json)
      return EXIT.badInput
    }
    if (error instanceof BadInput) {
      say(env, error.problems, json)
      return EXIT.badInput
    }
    env.err(`Tinwright broke: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`)
    return EXIT.internal
  }
}
