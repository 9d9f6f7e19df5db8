import '@fontsource/source-sans-3/latin-400.css'
import '@fontsource/source-sans-3/latin-600.css'
import './style/tokens.css'
import './style/base.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { Bench } from './bench/bench.tsx'
import { keepPages } from './offline/register.ts'
import './settings/settings.ts'

const place = document.getElementById('bench')
if (place === null) throw new Error('The page has no place for the bench')
createRoot(place).render(
  <StrictMode>
    <Bench />
  </StrictMode>,
)

// The page first, its keeping after.
if (import.meta.env.PROD) addEventListener('load', () => void keepPages())
