import { type TagCheckJudged, tagCheckSentence } from '../../core/debrief/tagCheckJudged';

/** Was the tag checked before leaving, and what did it cost if not? */
export function TagCheckPart({ judged }: { readonly judged: TagCheckJudged }) {
  return <p>{tagCheckSentence(judged)}</p>;
}
