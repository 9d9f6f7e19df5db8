import type { ElementType, Key, ReactElement } from 'react'
import * as react from 'react/jsx-dev-runtime'
import { wholeProps } from './wholeText.ts'

// The same for the pages while they are being worked on.

export { Fragment, type JSX } from 'react/jsx-dev-runtime'

export const jsxDEV = (
  type: ElementType,
  props: unknown,
  key: Key | undefined,
  isStatic: boolean,
  source?: react.JSXSource,
  self?: unknown,
): ReactElement => react.jsxDEV(type, wholeProps(type, props), key, isStatic, source, self)
