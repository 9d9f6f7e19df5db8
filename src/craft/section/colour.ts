import type { Theme } from './theme.ts'

type Triple = readonly [number, number, number]

const channels = (hex: string): Triple => {
  const value = Number.parseInt(hex.slice(1), 16)
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255]
}

const hex = (rgb: Triple): string =>
  `#${rgb
    .map((channel) =>
      Math.round(Math.min(255, Math.max(0, channel)))
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`

/** sRGB decoding, IEC 61966-2-1. */
const toLinear = (channel: number): number => {
  const c = channel / 255
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
}
const fromLinear = (c: number): number => 255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055)

/** Mixes two colours in linear light, so that the middle is as bright as both together. */
const mixed = (a: string, b: string, t: number): string => {
  const [p, q] = [channels(a).map(toLinear), channels(b).map(toLinear)]
  return hex(p.map((channel, i) => fromLinear(channel + ((q[i] ?? 0) - channel) * t)) as unknown as Triple)
}

/** Share of white light that a colour gives back, 0 black to 1 white (sRGB luminance, IEC 61966-2-1) [1]. */
export const luminance = (colour: string): number => {
  const [r, g, b] = channels(colour).map(toLinear) as unknown as Triple
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

/** Colour of air or gas at a temperature [K]; cooler or hotter than the scale takes its end. */
export const heatColour = ({ heat }: Theme, temperature: number): string => {
  const above = heat.findIndex(([kelvin]) => kelvin >= temperature)
  const last = heat.length - 1
  const [highKelvin, high] = heat[above < 0 ? last : above] as (typeof heat)[number]
  const [lowKelvin, low] = heat[Math.max(0, above < 0 ? last : above - 1)] as (typeof heat)[number]
  if (highKelvin === lowKelvin || temperature >= highKelvin)
    return above < 0 ? high : temperature <= lowKelvin ? low : high
  return mixed(low, high, (temperature - lowKelvin) / (highKelvin - lowKelvin))
}
