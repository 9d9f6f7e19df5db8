import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plugin } from 'vite'

/** The folder of the package that a module lies in, or null for one of ours. */
export const packageFolder = (id: string): string | null =>
  /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/.exec(id.replace(/^\0/, ''))?.[1] ?? null

/** Name, version, licence, and the text that goes along; where a package has none, its own page. */
export const licenceOf = (folder: string): string => {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    readonly name: string
    readonly version: string
    readonly license?: string
  }
  const file = readdirSync(folder).find((one) => /^licen[cs]e(?:\.\w+)?$/i.test(one))
  const text =
    file === undefined
      ? `https://www.npmjs.com/package/${name}`
      : readFileSync(join(folder, file), 'utf8').trim()
  return `${name} ${version} (${license ?? 'see its text'})\n\n${text}`
}

/**
 * What is bundled is handed on with every page that is served, and its licences ask to go along: `licences.txt`, of the pages
 * and of their workers, which are built on the way and are told first.
 */
export const licencesKept = (): { readonly page: Plugin; readonly worker: Plugin } => {
  const folders = new Set<string>()
  const gather: Plugin['generateBundle'] = (_, bundle) => {
    for (const file of Object.values(bundle)) {
      if (file.type !== 'chunk') continue
      for (const id of file.moduleIds) {
        const folder = packageFolder(id)
        if (folder !== null && existsSync(join(folder, 'package.json'))) folders.add(folder)
      }
    }
  }
  return {
    worker: { name: 'tinwright-licences-of-workers', apply: 'build', generateBundle: gather },
    page: {
      name: 'tinwright-licences',
      apply: 'build',
      generateBundle(options, bundle, isWrite) {
        gather.call(this, options, bundle, isWrite)
        const texts = [...folders].map(licenceOf).sort()
        const source = `What others made and these pages bring along, each under its own licence.\n\n${texts.join('\n\n----\n\n')}\n`
        this.emitFile({ type: 'asset', fileName: 'licences.txt', source })
      },
    },
  }
}
