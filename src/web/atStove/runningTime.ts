const two = (value: number): string => String(value).padStart(2, '0')

/** A time that runs, to the second [from ms]: `4:07`, `1:04:07`; `−0:12` before. */
export const runningTime = (milliseconds: number): string => {
  const seconds = Math.floor(Math.abs(milliseconds) / 1000)
  const hours = Math.floor(seconds / 3600)
  const minutes = Math.floor(seconds / 60) % 60
  const text = hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`
  return milliseconds < 0 && seconds > 0 ? `−${text}` : text
}

/** Time of day on this device, to the second. */
export const dayTime = (milliseconds: number): string => {
  const at = new Date(milliseconds)
  return `${two(at.getHours())}:${two(at.getMinutes())}:${two(at.getSeconds())}`
}

/** As long as a burn ever is told by a running clock [ms]. */
export const HALF_DAY = 43_200_000

/** After lighting where that says something, else the day and the time of day: nobody counts a burn in days [ms since 1970]. */
export const whenText = (at: number, lit: number | null): string => {
  if (lit === null) return dayTime(at)
  if (Math.abs(at - lit) <= HALF_DAY) return runningTime(at - lit)
  return new Date(at).toLocaleDateString('sv')
}
