import { useCell } from '../cell/useCell.ts'
import { notices, putAway } from './notices.ts'

export const NoticeList = () => {
  const all = useCell(notices)
  return (
    <div className="notices" role="status" aria-live="polite">
      {all.map(({ id, sentence, action }) => (
        <div className="notice" key={id}>
          <p>{sentence}</p>
          {action === undefined ? null : (
            <button
              type="button"
              onClick={() => {
                putAway(id)
                action.do()
              }}
            >
              {action.name}
            </button>
          )}
          <button type="button" data-weight="quiet" onClick={() => putAway(id)}>
            Put away
          </button>
        </div>
      ))}
    </div>
  )
}
