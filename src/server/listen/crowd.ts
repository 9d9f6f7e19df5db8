import type { Server } from 'node:net'

/** Lines at once, of everybody at one entrance. */
export const MOST_CONNECTIONS = 256
/** Of one device: a browser opens six for each name it calls us by. */
export const MOST_OF_ONE_DEVICE = 48

/**
 * Leaves room for others at an entrance: whoever opens more lines than any browser does is hung up on, before a byte of
 * what it sends is read.
 */
export const leaveRoom = (
  server: Server,
  mostOfOne: number,
  tell: (address: string, sentence: string) => void,
): void => {
  const lines = new Map<string, number>()
  server.maxConnections = MOST_CONNECTIONS
  server.prependListener('connection', (socket) => {
    const address = socket.remoteAddress ?? 'unknown'
    const now = (lines.get(address) ?? 0) + 1
    lines.set(address, now)
    socket.once('close', () => {
      const left = (lines.get(address) ?? 1) - 1
      if (left === 0) lines.delete(address)
      else lines.set(address, left)
    })
    if (now <= mostOfOne) return
    tell(address, `It has ${mostOfOne} lines open already; no browser needs more. This one was cut.`)
    socket.destroy()
  })
  server.on('drop', (socket) =>
    tell(socket?.remoteAddress ?? 'unknown', `${MOST_CONNECTIONS} lines are open already. This one was cut.`),
  )
}
