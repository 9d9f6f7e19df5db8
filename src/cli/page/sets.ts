import type { Course } from '#science/answers/course.ts'
import type { Bands } from '#science/bands/bands.ts'

const SAID: Readonly<Record<Course, readonly [one: string, many: string]>> = {
  clean: ['burns clean', 'burn clean'],
  'rich and smoky': ['is rich and smoky', 'are rich and smoky'],
  smoulder: ['smoulders', 'smoulder'],
  'quenched lean': ['may blow the flame cold', 'may blow the flame cold'],
  'goes out before the floor': ['goes out before the floor', 'go out before the floor'],
  'does not burn': ['does not burn', 'do not burn'],
}

/** In how many of the sets the stove burns how. */
export const setsText = ({ samples, outcomes }: Pick<Bands<string>, 'samples' | 'outcomes'>): string => {
  const courses = (Object.keys(SAID) as Course[])
    .map((course) => [Math.round((outcomes[course] ?? 0) * samples), SAID[course]] as const)
    .filter(([count]) => count > 0)
    .map(([count, [one, many]]) => `${count} ${count === 1 ? one : many}`)
  return `Of ${samples} sets of coefficients, any of which may be yours: ${courses.join(', ')}. A band holds the middle nine tenths of the sets that have such a figure.`
}
