import { describe, expect, it } from 'vitest';
import type { RackRecord } from '../../../src/domain/records/rack-records';
import { sheetFile } from '../../../src/ui/sheet/sheet-file';
import { awkward, knockedLead } from '../../browser/sheet-rack';
import { sheetSample } from '../../domain/sheet/sheet-sample';

const renamed = (records: readonly RackRecord[]): readonly RackRecord[] =>
  records.map((record) =>
    record.kind === 'pan-edit'
      ? {
          ...record,
          fields: {
            ...record.fields,
            name: awkward,
            owner: awkward,
            remarks: '</style><script>alert(1)</script>',
            wanted: '<img src=x onerror=alert(1)>',
          },
        }
      : record,
  );

describe('the sheet as a file of its own', () => {
  const html = sheetFile(sheetSample(knockedLead), '.sheet{color:#000}', null);

  it('is one whole HTML page with its own style', () => {
    expect(html.startsWith('<!doctype html>')).toBe(true);
    expect(html).toContain('<title>Heron</title>');
    expect(html).toContain('<style>.sheet{color:#000}</style>');
  });

  it('asks for nothing outside itself and holds no script', () => {
    expect(html).not.toMatch(/<script|<link|<iframe|<object|javascript:|@import|url\(/i);
    expect(html).not.toMatch(/(?:src|href)="(?!data:)/i);
    expect(html).toContain('default-src &#39;none&#39;');
  });

  it('holds the photo as data', () => {
    const photo = 'data:image/jpeg;base64,AAEC';
    expect(sheetFile(sheetSample(knockedLead), '', photo)).toContain(`src="${photo}"`);
  });

  it('shows names that look like markup as what they are', () => {
    const text = sheetFile(sheetSample(renamed(knockedLead), awkward), '', null);
    expect(text).not.toMatch(/<b |<script|<img/);
    expect(text.match(/<style>/g)).toHaveLength(1);
    expect(text.match(/<\/style>/g)).toHaveLength(1);
    expect(text).toContain(
      '&lt;b onclick=&quot;alert(1)&quot;&gt;Heron&lt;/b&gt; &amp; &#39;Co&#39;',
    );
    expect(text).toContain('&lt;/style&gt;&lt;script&gt;alert(1)&lt;/script&gt;');
  });
});
