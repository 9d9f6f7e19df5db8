/** Set-up could not go on, for a reason its message tells a person. */
export class SetUpFailed extends Error {
  /** @override */
  name = 'SetUpFailed'
}

const NETWORK =
  /\b(ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ENETUNREACH|EHOSTUNREACH|ETIMEDOUT|ERR_SOCKET_TIMEOUT|FETCH_ERROR)\b/
const CERTIFICATE =
  /\b(SELF_SIGNED_CERT_IN_CHAIN|UNABLE_TO_GET_ISSUER_CERT_LOCALLY|UNABLE_TO_VERIFY_LEAF_SIGNATURE|CERT_HAS_EXPIRED)\b/
const REASONS = /** @type {const} */ ([
  [
    CERTIFICATE,
    'npm does not trust the certificate of its registry. A proxy that opens secure traffic does this: ' +
      "give npm the proxy's certificate (npm config set cafile …) and run the command again.",
  ],
  [
    NETWORK,
    'npm could not reach its registry over the network. Set-up needs it once, for the packages named in ' +
      "package-lock.json. Connect, or set npm's proxy, and run the command again.",
  ],
  [/\bENOSPC\b/, 'The disk is full. Set-up needs about 500 MB; make room and run the command again.'],
  [
    /\b(EACCES|EPERM|EROFS)\b/,
    'npm may not write to this folder or to its cache. Give yourself the right to write there and run the command again.',
  ],
  [
    /\bEUSAGE\b/,
    'package.json and package-lock.json do not belong together. Run `npm install`, look at what it changed, and run the command again.',
  ],
  [
    /\b(EINTEGRITY)\b/,
    'A package did not arrive as package-lock.json says it should. Run `npm cache verify` and then the command again; ' +
      'if it comes back, do not install: someone may have changed the package.',
  ],
])

/**
 * What npm's output means, as a sentence with what to do.
 *
 * @param {string} output
 */
export const explain = (output) =>
  REASONS.find(([pattern]) => pattern.test(output))?.[1] ??
  'npm could not install the packages; its own words are above. Mend that and run the command again.'
