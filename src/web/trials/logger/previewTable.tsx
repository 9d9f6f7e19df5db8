import { formatQuantity } from '#basis/text/format.ts'
import type { Mapping } from '#proof/logger/mapping.ts'
import { momentText } from '#proof/logger/moment.ts'
import type { Preview } from '#proof/logger/preview.ts'
import type { LogFinding } from '#proof/logger/readLog.ts'
import { Wide } from '../wide.tsx'

const shown = (value: number | null, { quantity }: Mapping['channels'][number]): string => {
  if (value === null) return '–'
  return quantity === 'temperature' ? `${(value - 273.15).toFixed(1)} °C` : formatQuantity(value, 'mass', 'g')
}

const MOST_FINDINGS = 12

/** First lines as they stand and as they were read, and everything that was not read as it stands. */
export const PreviewTable = ({
  preview,
  mapping,
  findings,
}: {
  readonly preview: Preview
  readonly mapping: Mapping
  readonly findings: readonly LogFinding[]
}) => (
  <>
    <Wide label="First lines of the file">
      <table className="preview-table">
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">As it stands</th>
            <th scope="col">Time</th>
            {mapping.channels.map(({ name, column }) => (
              <th key={column} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {preview.rows.slice(0, 16).map(({ line, fields, time, values, said }) => (
            <tr key={line}>
              <th scope="row">{line}</th>
              <td className="small">{fields.join(' | ')}</td>
              <td>{time === null ? 'not read' : momentText(mapping.time, time)}</td>
              {mapping.channels.map((channel, c) => (
                <td key={channel.column}>{shown(values[c] ?? null, channel)}</td>
              ))}
              {said.length > 0 && <td className="small">{said.join(' ')}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
    <ul className="small trial-said">
      {preview.channels.map(({ name, readings, low, high, every }, c) => {
        const channel = mapping.channels[c]
        return (
          <li key={`${name} ${mapping.channels[c]?.column}`}>
            {name}: {readings} readings
            {every === null ? '' : `, one every ${Number(every.toPrecision(3))} s`}
            {channel === undefined || low === null || high === null
              ? ''
              : `, from ${shown(low, channel)} to ${shown(high, channel)}`}
          </li>
        )
      })}
    </ul>
    {findings.length > 0 && (
      <details className="logger-findings" open={findings.length <= 3}>
        <summary>
          {findings.length === 1 ? 'One thing' : `${findings.length} things`} not read as they stand
        </summary>
        <ul className="small trial-said">
          {findings.slice(0, MOST_FINDINGS).map(({ line, kind, sentence }) => (
            <li key={`${line} ${kind} ${sentence}`}>{sentence}</li>
          ))}
          {findings.length > MOST_FINDINGS && <li>{findings.length - MOST_FINDINGS} more of the like.</li>}
        </ul>
      </details>
    )}
  </>
)
