// What tests in the browser take in hand, in one place.
export { type ContextWish, launch, newContext } from '#scripts/openBench/browser.ts'
export { axeViolations, rested, sidewaysScroll, until } from './page.ts'
