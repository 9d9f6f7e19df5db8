import { config } from 'zod/v4'

// Zod would try whether it may make functions out of text. The policy of the page forbids that, and says so aloud
// each time. vite.config.ts puts this in place of `zod`, in the page and in every worker, so that it comes first.
config({ jitless: true })

export * from 'zod/v4'
