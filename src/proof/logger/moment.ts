import type { TimeMapping } from './mapping.ts'

const DAY = 86_400

/** Beyond it there are no dates [s]; a damaged figure gets there easily. */
const LAST_DATE = 8.64e12

const twoDigits = (n: number): string => String(n).padStart(2, '0')

/** To a tenth, without an idle one. */
const clock = (seconds: number): string => {
  const tenths = Math.round(seconds * 10)
  const [hours, minutes] = [Math.floor(tenths / 36_000), Math.floor(tenths / 600) % 60]
  const rest = tenths % 600
  const part = rest % 10 === 0 ? '' : `.${rest % 10}`
  return `${twoDigits(hours)}:${twoDigits(minutes)}:${twoDigits(Math.floor(rest / 10))}${part}`
}

/** A number of seconds as plainly as it can be said: `0.2 s`, `724 s`. */
export const secondsText = (seconds: number): string => `${Number(seconds.toFixed(1))} s`

/** A moment of the logger's clock, as its own display would say it [from s]. */
export const momentText = ({ form }: TimeMapping, at: number): string => {
  switch (form) {
    case 'elapsed':
      return secondsText(at)
    case 'elapsed clock':
      return clock(at)
    case 'time of day': {
      const days = Math.floor(at / DAY)
      const said = clock(at - days * DAY)
      return days === 0 ? said : `${said} of day ${days + 1}`
    }
    default:
      if (Math.abs(at) > LAST_DATE) return secondsText(at)
      return new Date(Math.round(at * 1000))
        .toISOString()
        .replace('T', ' ')
        .replace(/\.?0*Z$/, '')
  }
}
