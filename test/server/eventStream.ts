import { request } from 'node:http'

export interface Event {
  readonly event: string
  readonly data: string
  readonly id: string | null
}

export interface EventStream {
  /** The next event, as soon as it comes. */
  readonly next: () => Promise<Event>
  /** When the server ends it. */
  readonly ended: Promise<void>
  /** All that came, as it came. */
  readonly all: () => string
  /** Hangs up. */
  readonly leave: () => void
}

const eventOf = (block: string): Event | null => {
  const fields = new Map(
    block.split('\n').map((line) => [line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 2)]),
  )
  const data = fields.get('data')
  return data === undefined ? null : { event: fields.get('event') ?? '', data, id: fields.get('id') ?? null }
}

/** Listens as a browser's `EventSource` does: server-sent events of the HTML standard, section 9.2. */
export const listenTo = (
  host: string,
  port: number,
  path: string,
  headers: Readonly<Record<string, string>> = {},
): Promise<EventStream> =>
  new Promise((resolve, reject) => {
    const asked = request({ host, port, path, headers, agent: false }, (response) => {
      if (response.statusCode !== 200) {
        reject(new Error(`The stream was refused: ${response.statusCode}`))
        response.resume()
        return
      }
      let all = ''
      let rest = ''
      const events: Event[] = []
      const waiting: ((event: Event) => void)[] = []
      response.setEncoding('utf8')
      response.on('data', (chunk: string) => {
        all += chunk
        rest += chunk
        for (let end = rest.indexOf('\n\n'); end >= 0; end = rest.indexOf('\n\n')) {
          const event = eventOf(rest.slice(0, end))
          rest = rest.slice(end + 2)
          if (event === null) continue
          const first = waiting.shift()
          if (first === undefined) events.push(event)
          else first(event)
        }
      })
      const ended = new Promise<void>((done) => {
        response.on('close', done)
      })
      response.on('error', () => undefined)
      const next = (): Promise<Event> => {
        const event = events.shift()
        return event === undefined ? new Promise((come) => waiting.push(come)) : Promise.resolve(event)
      }
      resolve({ next, ended, all: () => all, leave: () => asked.destroy() })
    })
    asked.on('error', reject)
    asked.end()
  })
