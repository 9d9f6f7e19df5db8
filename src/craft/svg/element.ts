/** Source Sans 3 where it is installed, else what comes nearest on each system. */
export const FONTS =
  "'Source Sans 3', 'Source Sans Pro', 'Segoe UI', 'Helvetica Neue', Arial, 'Noto Sans', 'DejaVu Sans', sans-serif"

/** Two digits after the point are a hundredth of a pixel. */
export const px = (value: number): string => String(Number(value.toFixed(2)))

export const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

/** Attributes of an element; false and undefined are left out. */
export type Attributes = Readonly<Record<string, string | number | undefined>>

export const element = (name: string, attributes: Attributes, content = ''): string => {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? px(value) : escaped(value as string)}"`)
    .join('')
  return content === '' ? `<${name}${written}/>` : `<${name}${written}>${content}</${name}>`
}
