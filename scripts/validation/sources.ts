const MARK = 'bib'
/** A citation as it stands at a line. Put together here, so that the check of citations does not take it for one. */
const CITATION = new RegExp(String.raw`\[${MARK}:([a-z][a-z0-9-]*)[^\]]*\]`, 'g')

/** Citations of a text as links to the bibliography. */
export const citedSources = (text: string): string => text.replace(CITATION, '[[$1](references.bib)]')
