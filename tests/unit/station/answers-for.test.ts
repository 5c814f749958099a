import { expect, it } from 'vitest'
import { answersFor } from '@/lib/station/worker/answers-for'

const origin = 'https://kitchen.test:3443'
const files = ['/station/files/station-ABC.js']
const asked = (path: string, more: { method?: string; mode?: string } = {}) =>
  answersFor({ method: 'GET', mode: 'cors', url: new URL(path, origin).href, ...more }, origin, files)

it('answers the document as a page, whatever stands behind it, and the files of its build', () => {
  expect(asked('/station', { mode: 'navigate' })).toBe('/station')
  expect(asked('/station?from=home#top', { mode: 'navigate' })).toBe('/station')
  expect(asked(files[0] ?? '')).toBe(files[0])
})

it.each([
  '/stations',
  '/station/',
  '/station/files/station-OLD.js',
  '/api/v1/station',
  '/api/v1/entries',
  '/',
  'https://elsewhere.example/station',
])('leaves %s alone', (path) => expect(asked(path, { mode: 'navigate' })).toBeNull())

it('answers nothing that writes', () => {
  expect(asked('/station', { mode: 'navigate', method: 'POST' })).toBeNull()
})
