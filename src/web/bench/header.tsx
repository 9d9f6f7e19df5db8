import { useState } from 'react'
import { Link } from '../routes/link.tsx'
import { type Place, pathOf } from '../routes/routes.ts'
import { Choice } from '../settings/choice.tsx'
import { singleKeys } from '../settings/settings.ts'
import { LookSwitch, UnitSwitch } from '../settings/switches.tsx'
import { MAIN_PLACES, mainPlaceOf } from './places.ts'
import { SheetDialog } from './sheetDialog.tsx'

const PlaceLinks = ({ place }: { readonly place: Place }) => {
  const main = mainPlaceOf(place)
  return MAIN_PLACES.map(({ name, place: to }) => (
    <Link
      key={name}
      to={to}
      aria-current={to.at === main ? (to.at === place.at ? 'page' : 'true') : undefined}
    >
      {name}
    </Link>
  ))
}

export const Header = ({ place, showKeys }: { readonly place: Place; readonly showKeys: () => void }) => {
  const [open, setOpen] = useState(false)
  return (
    <div className="bench-head">
      <Link to={{ at: 'home' }} className="wordmark">
        Tinwright
      </Link>
      <nav aria-label="Places" className="bench-places">
        <PlaceLinks place={place} />
      </nav>
      <div className="bench-units">
        <UnitSwitch />
      </div>
      <button
        type="button"
        data-weight="quiet"
        className="bench-look"
        onClick={() => setOpen(true)}
        aria-haspopup="dialog"
      >
        <span className="bench-look-units">Units and look</span>
        <span className="bench-look-alone">Look</span>
      </button>
      <button
        type="button"
        data-weight="quiet"
        className="bench-keys"
        onClick={showKeys}
        aria-haspopup="dialog"
      >
        Keys
      </button>
      <SheetDialog title="How the bench looks" open={open} onClose={() => setOpen(false)}>
        <div className="view-sheet">
          <div className="sheet-units">
            <UnitSwitch />
          </div>
          <LookSwitch />
          <Choice
            legend="Keys without Ctrl or Cmd, such as ?"
            cell={singleKeys}
            options={[
              { value: 'on', name: 'on' },
              { value: 'off', name: 'off' },
            ]}
          />
          <p className="muted small">Of this browser only: others at the workshop keep theirs.</p>
        </div>
      </SheetDialog>
    </div>
  )
}

/** The places again, under the thumb. */
export const FootBar = ({ place }: { readonly place: Place }) => (
  <nav aria-label="Places, below" className="bench-foot" key={pathOf({ at: 'home' })}>
    <PlaceLinks place={place} />
  </nav>
)
