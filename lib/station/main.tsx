import { createRoot } from 'react-dom/client'
import { App } from './screens/app'
import { Insecure } from './screens/insecure'
import { keepGoing } from './talk/keep-going'
import { openSlips } from './talk/open-slip'
import { watchWorker } from './worker/watch-worker'

const place = document.getElementById('station')
if (!place) throw new Error('the document has no place for the station')
const root = createRoot(place)

// On an address that browsers do not trust there is no worker and no safe store: nothing is begun that would be lost.
if (window.isSecureContext && 'serviceWorker' in navigator && 'locks' in navigator) {
  watchWorker().catch(() => undefined)
  keepGoing()
  openSlips()
  root.render(<App />)
} else root.render(<Insecure />)
