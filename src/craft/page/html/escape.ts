import { dualValues } from '../dualValues.ts'

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

/** Text as it stands in an attribute or between tags. */
export const plainHtml = escaped

/** Text with its values in two units marked, so that a reader may choose the system they read in. */
export const textHtml = (text: string): string =>
  dualValues(text)
    .map((stretch) =>
      stretch.kind === 'text'
        ? escaped(stretch.text)
        : `<span class="both"><span class="mm">${escaped(stretch.metric)}</span> <span class="in"><i>(</i>${escaped(stretch.inch)}<i>)</i></span></span>`,
    )
    .join('')
