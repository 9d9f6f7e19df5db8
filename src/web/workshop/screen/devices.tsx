import { useEffect, useState } from 'react'
import { type Device, type Door, type Invitation, WITHOUT_CERTIFICATE } from '#wire/door.ts'
import { workshop } from '../workshop.ts'

const CAUTION =
  'What passes between a device and this machine is not encrypted: let devices in only in a network whose people you trust.'

/** A picture that the server drew, shown as a picture and not as a part of the page. */
const pictureOf = (svg: string): string => `data:image/svg+xml;utf8,${encodeURIComponent(svg)}`

const InvitationView = ({ invitation }: { readonly invitation: Invitation }) => {
  const { code, until, pages, pictures } = invitation
  const time = new Date(until).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })
  return (
    <div className="invitation">
      {pictures[0] === undefined ? null : (
        <img
          src={pictureOf(pictures[0])}
          width={232}
          height={232}
          alt="The address and the code, to be scanned"
        />
      )}
      <div>
        <p>Scan the picture with the other device, or open there</p>
        <ul>
          {pages.map((page) => (
            <li key={page}>{page.replace(/#.*$/, '')}</li>
          ))}
        </ul>
        <p>and type</p>
        <p className="invitation-code">{code}</p>
        <p className="muted small">Good for one device, until {time}. An earlier code has ended.</p>
      </div>
    </div>
  )
}

/** Which devices of the house may come in; seen at this machine only. */
export const Devices = ({ standing }: { readonly standing: Door | null }) => {
  const [devices, setDevices] = useState<readonly Device[] | null>(null)
  const [invitation, setInvitation] = useState<Invitation | null>(null)
  const [said, setSaid] = useState('')
  const look = async (): Promise<void> => {
    const answer = await workshop.ask('devices', {})
    if (answer.ok) setDevices(answer.value)
    else setSaid(answer.refusal.sentence)
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at once, when the page comes
  useEffect(() => void look(), [])
  // A device that has come in by the code is seen without a click.
  // biome-ignore lint/correctness/useExhaustiveDependencies: for as long as a code is out
  useEffect(() => {
    if (invitation === null) return
    const timer = setInterval(() => void look(), 3000)
    return () => clearInterval(timer)
  }, [invitation])
  const invite = async (): Promise<void> => {
    const answer = await workshop.ask('invite', {})
    setSaid(answer.ok ? '' : answer.refusal.sentence)
    setInvitation(answer.ok ? answer.value : null)
  }
  const revoke = async (device: Device): Promise<void> => {
    const answer = await workshop.ask('revoke', { device: device.id })
    if (answer.ok) {
      setDevices(answer.value)
      setSaid(`${device.name} may not come in any more.`)
    } else setSaid(answer.refusal.sentence)
  }
  return (
    <section>
      <h2>Devices of the house</h2>
      {standing?.house === false ? (
        <p>
          The bench listens to this machine alone. To log a burn with a phone at the stove, start it so that
          it also listens to the house: <code>npm start -- --lan</code>
        </p>
      ) : (
        <>
          <p>
            A phone at the stove can log a burn into this workshop. Each device is let in once, by a code.
          </p>
          {standing?.encrypted === false ? (
            <>
              <p className="muted small">{CAUTION}</p>
              <p className="muted small">{WITHOUT_CERTIFICATE}</p>
            </>
          ) : null}
          <div className="row">
            <button type="button" onClick={() => void invite()}>
              {invitation === null ? 'Let a device in' : 'Another code'}
            </button>
          </div>
          {invitation === null ? null : <InvitationView invitation={invitation} />}
        </>
      )}
      <p role="status">{said}</p>
      {devices === null || devices.length === 0 ? (
        standing?.house === true ? (
          <p className="muted">No device was let in yet.</p>
        ) : null
      ) : (
        <table className="devices">
          <thead>
            <tr>
              <th scope="col">Device</th>
              <th scope="col">Let in</th>
              <th scope="col">Last seen</th>
              <th scope="col">
                <span className="unseen">What to do</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {devices.map((device) => (
              <tr key={device.id}>
                <th scope="row">{device.name}</th>
                <td>{new Date(device.since).toLocaleDateString()}</td>
                <td>{device.seen}</td>
                <td>
                  <button
                    type="button"
                    aria-label={`Let in no more: ${device.name}`}
                    onClick={() => void revoke(device)}
                  >
                    Let in no more
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  )
}
