import type { LaidPage } from '../page/lay.ts'
import type { Sheet } from './sheet.ts'

const MM_PER_POINT = 25.4 / 72

/** A laid page of words and pictures as a sheet among those at true size: one picture that fills it [mm]. */
export const pageSheet = ({ svg, width, height, section }: LaidPage): Sheet => ({
  size: { width: width * MM_PER_POINT, height: height * MM_PER_POINT },
  label: section,
  pieces: [],
  furniture: [],
  pictures: [{ svg, at: { x: 0, y: height * MM_PER_POINT }, width: width * MM_PER_POINT }],
})
