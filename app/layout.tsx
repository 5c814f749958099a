import type { Metadata, Viewport } from 'next'
import type { ReactNode } from 'react'
import { wordsIn } from '@/lib/words/words'
import './globals.css'
import { currentLanguage } from './language'

export async function generateMetadata(): Promise<Metadata> {
  const { desk } = wordsIn(await currentLanguage())
  return { title: { default: desk.product, template: `%s · ${desk.product}` }, robots: { index: false } }
}

export const viewport: Viewport = { width: 'device-width', initialScale: 1, colorScheme: 'light dark' }

export default async function RootLayout({ children }: { children: ReactNode }) {
  const language = await currentLanguage()
  return (
    <html lang={language}>
      <body>{children}</body>
    </html>
  )
}
