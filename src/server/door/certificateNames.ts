import type { X509Certificate } from 'node:crypto'
import { isIP } from 'node:net'

/** A DNS name by which a device of the house can call this bench; not one that leads the device to itself. */
const isCallable = (name: string): boolean =>
  /^[a-z0-9_-]+(?:\.[a-z0-9_-]+)*$/.test(name) && isIP(name) === 0 && !/(^|\.)localhost$/.test(name)

/** A * for the first label, and at least two more: no browser takes a whole top-level domain for a name. */
const PATTERN = /^\*((?:\.[a-z0-9_-]+){2,})$/

export interface CertificateNames {
  /** Names that it stands for, word for word. */
  readonly names: readonly string[]
  /** Those with a * for one label, `*.club.example`: no address, unless it is said which of their names is meant. */
  readonly patterns: readonly string[]
}

/** DNS names of a certificate. Browsers look at no other field (RFC 9110, section 4.3.4). */
export const namesIn = ({ subjectAltName = '' }: X509Certificate): CertificateNames => {
  const found = [
    ...new Set(
      subjectAltName.split(', ').flatMap((part) => {
        const name = /^DNS:(\S+)$/.exec(part)?.[1]?.toLowerCase()
        return name === undefined ? [] : [name]
      }),
    ),
  ]
  return { names: found.filter(isCallable), patterns: found.filter((name) => PATTERN.test(name)) }
}

/**
 * Whether a certificate stands for a name: word for word, or by a * that is the whole of the first label and stands for
 * just one (RFC 9525, section 6.3).
 */
export const standsFor = (cert: X509Certificate, name: string): boolean =>
  isCallable(name) && cert.checkHost(name, { subject: 'never', partialWildcards: false }) !== undefined
