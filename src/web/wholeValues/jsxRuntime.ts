import type { ElementType, Key, ReactElement } from 'react'
import * as react from 'react/jsx-runtime'
import { wholeProps } from './wholeText.ts'

// Every element of the bench is made here (`jsxImportSource`), so that no room can leave a value to be broken over a line's end.

export { Fragment, type JSX } from 'react/jsx-runtime'

export const jsx = (type: ElementType, props: unknown, key?: Key): ReactElement =>
  react.jsx(type, wholeProps(type, props), key)

export const jsxs = (type: ElementType, props: unknown, key?: Key): ReactElement =>
  react.jsxs(type, wholeProps(type, props), key)
