/**
 * What a button is given while it has nothing to do: it looks and says so, but keeps the focus that `disabled` would drop.
 */
export const dim = (idle: boolean, act: () => void) =>
  idle ? ({ 'aria-disabled': true, onClick: undefined } as const) : ({ onClick: act } as const)
