import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { chromium, type Browser, type Page } from 'playwright/test'
import { chromiumArguments, findOrInstallChromium } from './chromium'
import { onPaper, toVideo, type Drawn } from './drawn-codes'

const size = { width: 640, height: 480 }

export type FakeCamera = {
  browser: Browser
  /** What the camera sees when it is opened next. */
  see(...codes: Drawn[]): void
  close(): Promise<void>
}

/** A Chromium whose camera shows a film of ours. @param isAllowed whether the person lets the page have it */
export async function openFakeCamera({ isAllowed = true } = {}): Promise<FakeCamera> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-camera-'))
  const film = path.join(folder, 'film.y4m')
  const see = (...codes: Drawn[]) => {
    // As large as they fit, and no larger than a slip that is held a hand's width away.
    const across = codes.reduce((sum, code) => sum + (code[0]?.length ?? 0) + 12, 12)
    const picture = onPaper(codes, Math.min(4, Math.floor(size.width / across)), size)
    fs.writeFileSync(film, toVideo([picture, picture, picture]))
  }
  see()
  const browser = await chromium.launch({
    executablePath: findOrInstallChromium(),
    args: [
      ...chromiumArguments,
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-video-capture=${film}`,
      ...(isAllowed ? ['--use-fake-ui-for-media-stream'] : []),
    ],
  })
  return {
    browser,
    see,
    async close() {
      await browser.close()
      fs.rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** Notes every camera that the page gets from now on. */
export async function noteCameras(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const cameras: MediaStreamTrack[] = []
    Object.assign(window, { cameras })
    const devices = navigator.mediaDevices
    const ask = devices.getUserMedia.bind(devices)
    devices.getUserMedia = async (wanted) => {
      const stream = await ask(wanted)
      cameras.push(...stream.getTracks())
      return stream
    }
  })
}

/** How many cameras the page has had, and how many it has still. */
export function camerasOf(page: Page): Promise<{ had: number; has: number }> {
  return page.evaluate(() => {
    const { cameras } = window as unknown as { cameras: MediaStreamTrack[] }
    return { had: cameras.length, has: cameras.filter(({ readyState }) => readyState === 'live').length }
  })
}
