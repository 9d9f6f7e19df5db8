import { spawnSync } from 'node:child_process'
import { chmodSync, chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'

/** A server of our own, on a socket in a folder of its own; gone after the tests. */
export interface PostgresServer {
  /** Address of a new, empty database. */
  readonly newDatabase: (options?: string) => Promise<string>
  /** Address of a new, empty schema in one database: much quicker. */
  readonly newSchema: () => Promise<string>
  readonly stop: () => void
}

const DEBIAN = '/usr/lib/postgresql'

/** Where Debian keeps the programs of the newest version; null where there is none. */
const programs = (): string | null => {
  if (!existsSync(DEBIAN)) return null
  const versions = readdirSync(DEBIAN).sort((a, b) => Number(b) - Number(a))
  const found = versions.map((version) => join(DEBIAN, version, 'bin'))
  return found.find((folder) => existsSync(join(folder, 'initdb'))) ?? null
}

/** Why the tests cannot run here, or null. On the build machine that is a failure. */
export const noPostgres = (): string | null => {
  if (programs() !== null) return null
  const reason = `no PostgreSQL server is installed in ${DEBIAN} (Debian package postgresql)`
  if (process.env.CI === 'true') throw new Error(reason)
  return reason
}

/** The server refuses to run as root: then as its own user, or as nobody. */
const serverUser = (): { readonly uid: number; readonly gid: number } | null => {
  if (process.getuid?.() !== 0) return null
  const number = (flag: string): number =>
    Number(spawnSync('id', [flag, 'postgres'], { encoding: 'utf8' }).stdout)
  const [uid, gid] = [number('-u'), number('-g')]
  return uid > 0 && gid > 0 ? { uid, gid } : { uid: 65534, gid: 65534 }
}

export const startPostgres = (): PostgresServer => {
  const bin = programs()
  if (bin === null) throw new Error('no PostgreSQL server')
  const user = serverUser()
  // A socket's path may have about a hundred letters.
  const folder = mkdtempSync(join(tmpdir(), 'twpg-'))
  if (user !== null) chownSync(folder, user.uid, user.gid)
  chmodSync(folder, 0o755)
  const data = join(folder, 'data')
  const run = (program: string, args: readonly string[]): void => {
    const done = spawnSync(join(bin, program), args, {
      encoding: 'utf8',
      cwd: folder,
      ...(user ?? {}),
      // The server goes on after pg_ctl and would hold a pipe open.
      stdio: ['ignore', program === 'initdb' ? 'pipe' : 'ignore', program === 'initdb' ? 'pipe' : 'ignore'],
    })
    if (done.status !== 0)
      throw new Error(
        `${program} ended with ${done.status ?? done.signal}: ${done.stdout ?? ''}${done.stderr ?? ''}`,
      )
  }
  run('initdb', ['-D', data, '-U', 'maker', '-A', 'trust', '-E', 'UTF8', '--locale=C', '--no-sync'])
  const settings = ['-c listen_addresses=', `-c unix_socket_directories=${folder}`, '-c fsync=off']
  run('pg_ctl', ['-D', data, '-w', '-l', join(folder, 'log'), '-o', settings.join(' '), 'start'])
  let count = 0
  const address = (database: string): string =>
    `postgres://maker@localhost/${database}?host=${encodeURIComponent(folder)}`
  const command = async (sql: string): Promise<void> => {
    const client = new pg.Client({ connectionString: address('postgres') })
    await client.connect()
    await client.query(sql)
    await client.end()
  }
  return {
    newDatabase: async (options = '') => {
      const name = `workshop${++count}`
      await command(`create database ${name} ${options}`)
      return address(name)
    },
    newSchema: async () => {
      const name = `workshop${++count}`
      await command(`create schema ${name}`)
      return `${address('postgres')}&options=${encodeURIComponent(`-c search_path=${name}`)}`
    },
    stop: () => {
      run('pg_ctl', ['-D', data, '-w', '-m', 'immediate', 'stop'])
      rmSync(folder, { recursive: true, force: true })
    },
  }
}
