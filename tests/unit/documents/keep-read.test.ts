import { describe, expect, it } from 'vitest'
import { keepRead } from '@/lib/documents/keep-read'

describe('documents that were read', () => {
  it('are read once for each text, and again when a hundred others came after', () => {
    const asked: string[] = []
    const read = keepRead((text) => {
      asked.push(text)
      return { text }
    })
    expect(read('a')).toBe(read('a'))
    for (let i = 0; i < 99; i++) read(`${i}`)
    read('a')
    expect(asked.filter((text) => text === 'a')).toHaveLength(1)
    for (let i = 100; i < 200; i++) read(`${i}`)
    expect(read('a')).toEqual({ text: 'a' })
    expect(asked.filter((text) => text === 'a')).toHaveLength(2)
  })

  it('cannot be changed by one of those who share them', () => {
    const read = keepRead((text) => ({ arms: [{ name: text }] }))
    expect(() => {
      read('malt').arms[0]!.name = 'rye'
    }).toThrow(TypeError)
    expect(() => read('malt').arms.push({ name: 'rye' })).toThrow(TypeError)
    expect(read('malt')).toEqual({ arms: [{ name: 'malt' }] })
  })
})
