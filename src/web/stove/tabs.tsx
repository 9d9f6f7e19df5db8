import type { ReactNode } from 'react'

export interface Tab {
  readonly name: string
  readonly content: ReactNode
}

/** One thing at a time, by its word. */
export const Tabs = ({
  tabs,
  shown,
  onShow,
}: {
  readonly tabs: readonly Tab[]
  readonly shown: string
  readonly onShow: (name: string) => void
}) => {
  const current = tabs.find(({ name }) => name === shown) ?? tabs[0]
  return (
    <div className="stove-tabs">
      <div role="tablist" aria-label="About this stove" className="tab-words">
        {tabs.map(({ name }, i) => (
          <button
            key={name}
            type="button"
            role="tab"
            id={`tab-${i}`}
            aria-controls={`tab-panel-${i}`}
            aria-selected={name === current?.name}
            tabIndex={name === current?.name ? 0 : -1}
            data-weight="quiet"
            onClick={() => onShow(name)}
            onKeyDown={(event) => {
              const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0
              if (by === 0) return
              const next = tabs[(i + by + tabs.length) % tabs.length]
              if (next === undefined) return
              onShow(next.name)
              const sibling =
                event.currentTarget.parentElement?.children[(i + by + tabs.length) % tabs.length]
              if (sibling instanceof HTMLElement) sibling.focus()
            }}
          >
            {name}
          </button>
        ))}
      </div>
      {tabs.map(({ name, content }, i) => (
        <div
          key={name}
          role="tabpanel"
          id={`tab-panel-${i}`}
          aria-labelledby={`tab-${i}`}
          hidden={name !== current?.name}
        >
          {name === current?.name ? content : null}
        </div>
      ))}
    </div>
  )
}
