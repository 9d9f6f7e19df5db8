/** As many characters as a stove file may have; the store holds it to the reader's own bound. */
export const MAX_TEXT = 1_000_000
export const MAX_NOTE = 4000
export const MAX_NAME = 120
export const MAX_LABEL = 200
/** Characters of one event. */
export const MAX_EVENT = 10_000
/** Events in one batch: a phone that was away for a whole burn. */
export const MAX_EVENTS = 5000
/** Parents of one revision: it joins two, or a few. */
export const MAX_PARENTS = 100
/** A photo of a phone has three to eight. [bytes] */
export const MAX_PHOTO = 16_000_000
/** A workshop of many years, with photos. [bytes] */
export const MAX_ARCHIVE = 1_000_000_000

const ID = /^[A-Za-z0-9][A-Za-z0-9_.-]{0,79}$/
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d{1,3})?Z$/

export const ID_ALLOWED =
  'an id of up to 80 letters, digits, - _ and dots that begins with a letter or a digit'
export const INSTANT_ALLOWED = 'a time such as 2031-05-17T14:05:00Z'

export const isId = (text: string): boolean => ID.test(text)
export const isInstant = (text: string): boolean => INSTANT.test(text) && !Number.isNaN(Date.parse(text))

/** A request with no long text in it. [bytes] */
export const SMALL_BODY = 64_000
/** Every unit of a text takes at most three bytes in UTF-8; quotation marks and line ends are escaped besides. [bytes] */
export const TEXT_BODY = 4 * MAX_TEXT + SMALL_BODY
/** A longer batch of events wants to be sent in several. [bytes] */
export const EVENTS_BODY = 8_000_000
/** Brackets in brackets; what we ask for nests five deep. */
export const MAX_BODY_DEPTH = 12
/** Commas: five thousand events of six fields have thirty thousand. */
export const MAX_BODY_PARTS = 50_000
