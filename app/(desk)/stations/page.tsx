import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getAddress } from '@/lib/kitchen/stations/get-address'
import { listStations } from '@/lib/kitchen/stations/list-stations'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Sheet } from '@/lib/ui/sheet'
import { SideBySide } from '@/lib/ui/side-by-side'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { CertificateSection } from './certificate-section'
import { EnrolSection } from './enrol-section'
import { OpenSection } from './open-section'
import { StepsSection } from './steps-section'
import { TabletsSection } from './tablets-section'
import { TrustSection } from './trust-section'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).stations.title }
}

export default async function StationsPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { after } = await searchParams
  const language = await currentLanguage()
  const { stations: text } = wordsIn(language)
  const { bakery } = await ask(getDesk)
  const [found, { stations, people }] = await Promise.all([ask(getAddress), ask(listStations, { after })])
  const { headline, https } = {
    front: { headline: text.headlineFront, https: text.httpsFront },
    proxy: { headline: text.headlineProxy, https: text.httpsProxy },
    none: { headline: text.headlineNone, https: text.httpsNone },
  }[found.way]

  return (
    <Sheet
      kicker={text.title}
      headline={headline}
      margin={{
        label: text.about,
        entries: [
          { term: text.https, detail: https, strong: true },
          { term: text.port, detail: text.portText },
        ],
      }}
      actions={
        <LinkButton tone="plain" href="/team">
          {text.toTeam}
        </LinkButton>
      }
    >
      {found.way === 'none' ? (
        <Notice tone="warn" word={text.noneWord}>
          {say(text.none, language, { address: found.address })}
        </Notice>
      ) : null}
      <TabletsSection stations={stations} bakery={bakery} language={language} />
      <EnrolSection people={people} language={language} />
      {found.way === 'proxy' ? (
        <OpenSection title={text.address} sentence={text.proxyText} found={found} label={text.openPicture} />
      ) : null}
      {found.way === 'front' ? (
        <>
          <SideBySide>
            <TrustSection trust={found.trust} text={text} />
            <OpenSection title={text.openTitle} sentence={text.openText} found={found} label={text.openPicture} />
          </SideBySide>
          <CertificateSection certificate={found.certificate} bakery={bakery} text={text} language={language} />
          <StepsSection text={text} />
        </>
      ) : null}
    </Sheet>
  )
}
