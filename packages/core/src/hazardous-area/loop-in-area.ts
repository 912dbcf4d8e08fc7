import type { CableModel } from '../chain/cable/cable-kind.ts';
import { type ApparatusCertificate, type AssociatedCertificate, apparatusCertificate } from '../chain/certificate.ts';
import type { MeasuringChain } from '../chain/chain.ts';
import type { LineElement } from '../chain/line.ts';
import type { Answer, Sheet } from '../quantity/index.ts';
import { type Marking, markingsOf } from './marking.ts';

/** A part that stands in the area, with what its certificate says. */
export interface ApparatusInArea {
  readonly of: string;
  readonly certificate: ApparatusCertificate;
  readonly markings: Answer<readonly Marking[]>;
}

/** The barrier or isolator that limits what goes into the area. */
export interface BarrierOfLoop {
  readonly of: string;
  readonly tag: string | undefined;
  readonly earthed: boolean;
  readonly certificate: AssociatedCertificate;
  readonly markings: Answer<readonly Marking[]>;
}

/** A measuring chain sorted by where its parts stand: the transducer is in the area, the input is not. */
export interface LoopInArea {
  /** The transducer, where it has a certificate, and what else of the line stands before the barrier with one. */
  readonly apparatus: readonly ApparatusInArea[];
  /** The transducer without a certificate. */
  readonly uncertified: string | undefined;
  /** Before the barrier, without certificate or declaration: whose, and whether it is a source itself. */
  readonly strangers: readonly { readonly of: string; readonly source: boolean }[];
  readonly barrier: BarrierOfLoop | undefined;
  /** Barriers behind the first one: their limits are not those of the loop. */
  readonly further: readonly string[];
  readonly cables: readonly CableModel[];
}

export function loopInArea(chain: MeasuringChain): LoopInArea {
  const at = chain.line.findIndex((each) => each.is === 'part' && each.part.associated !== undefined);
  const before = at < 0 ? chain.line : chain.line.slice(0, at);
  const { sheet } = chain.parts.transducer;
  const own = apparatusCertificate(sheet as Sheet);
  const inLine = before.flatMap((each) => (each.is === 'part' ? [each.part] : []));
  return {
    apparatus: [own, ...inLine.map((part) => part.apparatus)].flatMap((certificate) =>
      certificate === undefined ? [] : [inArea(certificate)],
    ),
    uncertified: own === undefined ? sheet.of : undefined,
    strangers: inLine
      .filter((part) => part.apparatus === undefined)
      .map((part) => ({ of: part.of, source: part.voltage !== undefined })),
    barrier: at < 0 ? undefined : barrierAt(chain.line[at]!),
    further: chain.line
      .slice(at + 1)
      .flatMap((each) => (at >= 0 && each.is === 'part' && each.part.associated !== undefined ? [each.part.of] : [])),
    cables: before.flatMap((each) => (each.is === 'cable' ? [each.cable] : [])),
  };
}

function inArea(certificate: ApparatusCertificate): ApparatusInArea {
  return { of: certificate.of, certificate, markings: markingsOf(certificate.marking, certificate.of) };
}

function barrierAt(element: LineElement): BarrierOfLoop | undefined {
  if (element.is !== 'part' || element.part.associated === undefined) return undefined;
  const { associated, earthed, of } = element.part;
  return {
    of,
    tag: element.tag,
    earthed: earthed !== undefined,
    certificate: associated,
    markings: markingsOf(associated.marking, of),
  };
}
