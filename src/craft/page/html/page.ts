import type { LetteringFonts } from '../../pdf/face.ts'
import type { Section } from '../block.ts'
import { base64 } from './base64.ts'
import { type Counter, sectionHtml } from './blocks.ts'
import { plainHtml, textHtml } from './escape.ts'
import { PLAN_STYLE } from './style.ts'

export interface HtmlPageInput {
  readonly title: string
  readonly about: string
  readonly issue: string
  readonly sections: readonly Section[]
  /** Goes into the page as it is: what runs in it. Text of a classic script without `</script`. */
  readonly script: string
  /** Data the script reads, by name; anything JSON can hold. */
  readonly data: Readonly<Record<string, unknown>>
  /** Markup after the section of that id: a place the script fills. */
  readonly after?: Readonly<Record<string, string>>
  readonly fonts: LetteringFonts
}

/**
 * Under the name the pictures ask for, so that they are lettered alike. Latin is the first file of a weight and always goes in; a second family holds the scripts that follow where they are used.
 */
const fontFaces = ({ regular, semibold }: LetteringFonts, text: string): string => {
  const extended = /[\u0100-\u02ff\u1e00-\u1eff]/.test(text)
  const face = (family: string, weight: number, bytes: Uint8Array | undefined): string =>
    bytes === undefined
      ? ''
      : `@font-face{font-family:'${family}';font-weight:${weight};src:url(data:font/woff;base64,${base64(bytes)}) format('woff')}`
  return [
    face('Source Sans 3', 400, regular[0]),
    face('Source Sans 3', 600, semibold[0]),
    ...(extended
      ? [face('Source Sans 3 More', 400, regular[1]), face('Source Sans 3 More', 600, semibold[1])]
      : []),
  ].join('\n')
}

/** JSON that cannot end the script element it stands in. */
const scriptJson = (value: unknown): string => JSON.stringify(value).replaceAll('<', '\\u003c')

const UNITS = [
  ['both', 'both'],
  ['mm', 'millimetres'],
  ['in', 'inches'],
] as const

const unitChoice = `<fieldset class="units"><legend>Sizes in</legend>${UNITS.map(
  ([value, label], i) =>
    `<label><input type="radio" name="units" value="${value}"${i === 0 ? ' checked' : ''}>${label}</label>`,
).join('')}</fieldset>`

/**
 * One file that holds a whole plan: text, pictures, lettering, what turns the stove. It asks for nothing from outside and works
 * offline; its own policy forbids it to. Without scripts everything but the turntable and the choice of units is there.
 */
export const htmlPage = (input: HtmlPageInput): string => {
  const { title, about, issue, sections, script, data, after = {}, fonts } = input
  if (script.includes('</script')) throw new SyntaxError('A script must not hold the end of its own element')
  const counter: Counter = { pictures: 0 }
  const body = sections
    .map((section) => `${sectionHtml(section, counter)}${after[section.id] ?? ''}`)
    .join('\n')
  const links = sections
    .map(({ id, title: name }) => `<li><a href="#${plainHtml(id)}">${plainHtml(name)}</a></li>`)
    .join('')
  const policy =
    "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; font-src data:; img-src data:"
  return `<!doctype html>
<html lang="en" data-units="both">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${plainHtml(title)}</title>
<meta name="description" content="${plainHtml(about)}">
<style>
${fontFaces(fonts, `${title}${body}`)}
${PLAN_STYLE}
</style>
</head>
<body>
<header>
<h1>${textHtml(title)}</h1>
<p>${textHtml(about)}</p>
<p class="muted">${textHtml(issue)}</p>
<nav aria-label="Parts of the plan"><ul>${links}</ul></nav>
${unitChoice}
</header>
<main>
${body}
</main>
<footer><p>${textHtml(issue)}</p></footer>
<script type="application/json" id="plan-data">${scriptJson(data)}</script>
<script>
${script}
</script>
</body>
</html>
`
}
