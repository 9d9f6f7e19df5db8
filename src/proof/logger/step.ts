/** Middle one of the times between readings that are not simultaneous, within each of the series; 0 for fewer than two [s]. */
export const usualStep = (...series: readonly Float64Array[]): number => {
  const steps: number[] = []
  for (const time of series)
    for (let i = 1; i < time.length; i++) {
      const step = (time[i] as number) - (time[i - 1] as number)
      if (step > 0) steps.push(step)
    }
  const sorted = Float64Array.from(steps).sort()
  return sorted[sorted.length >> 1] ?? 0
}
