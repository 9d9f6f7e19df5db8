import type { Command, CommanderError } from 'commander'
import type { Problem } from '#basis/problem.ts'
import { problemOf } from './input.ts'

/** What the parser of options found wrong, as the house says such things: field, value, what is allowed, fix. */
export const usageProblem = (error: CommanderError, program: Command, args: readonly string[]): Problem => {
  const command = commandOf(program, args)
  const called = command === program ? 'tinwright' : `tinwright ${command.name()}`
  const help = `Run \`${called} --help\` to see them all.`
  const said = /'([^']*)'/.exec(error.message)?.[1] ?? ''
  const meant = /\(Did you mean (.*)\?\)/.exec(error.message)?.[1]
  const fix = meant === undefined ? help : `Was ${meant} meant? ${help}`
  switch (error.code) {
    case 'commander.unknownCommand':
      return problemOf('usage.command', 'command', said, commandNames(program), fix)
    case 'commander.unknownOption':
      return problemOf('usage.option', 'option', said, optionNames(command), fix)
    case 'commander.missingArgument':
      return problemOf('usage.missing', said, '', wantedArgument(command, said), `Name it: ${called} FILE.`)
    case 'commander.optionMissingArgument': {
      const [flag = '', value = ''] = said.split(' ')
      return problemOf(
        'usage.option-value',
        flag,
        `${flag} alone`,
        `${flag} with its ${value}`,
        `Write it after ${flag}.`,
      )
    }
    case 'commander.excessArguments':
      return problemOf(
        'usage.excess',
        called,
        args.slice(1).join(' '),
        `no more than ${command.registeredArguments.length} name beside the options`,
        'Leave out what is too much; put a name with blanks in it in quotation marks.',
      )
    default:
      return problemOf('usage.other', called, args.join(' '), 'what --help shows', help)
  }
}

const commandOf = (program: Command, args: readonly string[]): Command =>
  program.commands.find((command) => command.name() === args[0]) ?? program

const commandNames = (program: Command): string =>
  program.commands.map((command) => command.name()).join(', ')

const optionNames = (command: Command): string =>
  [...command.options.map(({ long }) => long), '--help'].join(', ')

const wantedArgument = (command: Command, name: string): string => {
  const argument = command.registeredArguments.find((one) => one.name() === name)
  return argument === undefined || argument.description === '' ? name : `a ${argument.description}`
}
