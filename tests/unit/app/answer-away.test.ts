import fs from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { answerAway } from '@/app/answer-away'
import { awayPage } from '@/app/away-page'
import { awayDigest } from '@/lib/ui/away-digest'

const ask = (method: string, headers: Record<string, string> = {}) =>
  answerAway({ method, headers: new Headers(headers) }, 'abc')

describe('while the database is away', () => {
  it.each<[string, string, Record<string, string>, string, string]>([
    ['a page', 'GET', { accept: 'text/html' }, 'text/html; charset=utf-8', 'The bakery’s book does not answer'],
    ['whoever does not say what they take', 'GET', {}, 'text/html; charset=utf-8', 'The bakery’s book does not answer'],
    [
      'a part of a page',
      'GET',
      { 'sec-fetch-dest': 'empty' },
      'text/plain; charset=utf-8',
      'Nothing was kept; try again in a moment.',
    ],
    ['a form without an action', 'POST', {}, 'text/plain; charset=utf-8', 'Nothing was kept; try again in a moment.'],
    ['an action', 'POST', { 'next-action': 'x' }, 'text/plain', awayDigest],
  ])('%s is answered 503 with words, and told when to ask again', async (_, method, headers, type, words) => {
    const answer = ask(method, headers)
    expect(answer.status).toBe(503)
    expect(answer.headers.get('retry-after')).toBe('5')
    expect(answer.headers.get('cache-control')).toBe('no-store')
    expect(answer.headers.get('content-type')).toBe(type)
    expect(await answer.text()).toContain(words)
  })

  it('the page lets nothing in but its own style', () => {
    expect(ask('GET').headers.get('content-security-policy')).toBe(
      "default-src 'none'; style-src 'nonce-abc'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    )
    expect(awayPage('en', 'abc')).not.toMatch(/<script|style=/)
    expect(awayPage('en', 'abc').match(/<style[^>]*>/g)).toEqual(['<style nonce="abc">'])
  })

  it('every word of the page comes from the words files', () => {
    const body = /<body>([^]*)<\/body>/.exec(awayPage('en-XA', 'abc'))?.[1] ?? ''
    const texts = body
      .split(/<[^>]*>/)
      .map((text) => text.trim())
      .filter(Boolean)
    expect(texts.length).toBe(5)
    for (const text of texts) expect(text).toMatch(/^⟦.*⟧$|^\[.*\]$/)
  })

  it('has the colours of every other page', () => {
    const look = fs.readFileSync(path.resolve('app/globals.css'), 'utf8')
    const colours = awayPage('en', 'abc').match(/light-dark\([^)]*\)/g) ?? []
    expect(colours.length).toBeGreaterThan(5)
    expect(colours.filter((colour) => !look.includes(colour))).toEqual([])
  })
})
