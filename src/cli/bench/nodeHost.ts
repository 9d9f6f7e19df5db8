import { spawn } from 'node:child_process'
import { randomUUID } from 'node:crypto'
import { mkdirSync } from 'node:fs'
import { homedir, networkInterfaces } from 'node:os'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { readAssets } from '#server/asset/assets.ts'
import { readCertificate } from '#server/door/certificate.ts'
import { deviceList, newToken } from '#server/door/devices.ts'
import { houseAddresses } from '#server/door/house.ts'
import { qrLetters } from '#server/door/picture.ts'
import { openBench } from '#server/openBench.ts'
import { openWorkshop } from '#store/open.ts'
import { given } from '#wire/answer.ts'
import { deviceListPath, placeOf } from '../workshopPlace.ts'
import { demoFiles } from './demoFiles.ts'
import { deviceFileAt } from './deviceFile.ts'
import type { BenchHost } from './host.ts'

const folder = (name: string): string => fileURLToPath(new URL(`../../../${name}/`, import.meta.url))

const machine = () => ({ platform: process.platform, home: homedir(), variables: process.env })

const now = (): string => new Date().toISOString()

const OPENERS: Partial<Record<NodeJS.Platform, readonly [program: string, ...args: string[]]>> = {
  darwin: ['open'],
  win32: ['rundll32', 'url.dll,FileProtocolHandler'],
}

const openPage = (address: string): void => {
  const [program, ...args] = OPENERS[process.platform] ?? ['xdg-open']
  const opener = spawn(program, [...args, address], { stdio: 'ignore', detached: true })
  // A machine without a browser: the address stands in the terminal.
  opener.on('error', () => undefined)
  opener.unref()
}

const untilStopped = (): Promise<void> =>
  new Promise((resolve) => {
    const stop = (): void => {
      // A second one ends it at once, as everywhere.
      for (const signal of SIGNALS) process.off(signal, stop)
      resolve()
    }
    for (const signal of SIGNALS) process.on(signal, stop)
  })

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const

const onEnter = (pressed: () => void): (() => void) => {
  if (!process.stdin.isTTY) return () => undefined
  process.stdin.on('data', pressed)
  return () => {
    process.stdin.off('data', pressed)
    process.stdin.pause()
  }
}

export const nodeBenchHost = (): BenchHost => ({
  place: (named) => placeOf(machine(), named),
  open: (place) => openWorkshop(place, { at: now(), beginAs: randomUUID() }),
  demo: () => demoFiles(folder('examples')),
  devices: (place) =>
    deviceList(deviceFileAt(deviceListPath(machine(), place)), { now, newToken, newId: randomUUID }),
  houseAddresses: () => houseAddresses(networkInterfaces()),
  certificate: readCertificate,
  serve: async ({ place, ...wanted }) => {
    const assets = readAssets(folder('dist/web'))
    const path = deviceListPath(machine(), place)
    mkdirSync(dirname(path), { recursive: true })
    const bench = await openBench({
      ...wanted,
      assets,
      deviceFile: deviceFileAt(path),
      clock: () => performance.now(),
      now,
    })
    return bench.ok ? given({ bench: bench.value, built: assets.has('/index.html') }) : bench
  },
  qrLetters: (address) => (process.stdout.isTTY ? qrLetters(address) : null),
  openPage,
  onEnter,
  untilStopped,
})
