package datumpeg.analysis.report;

/** How the page looks: black on white, system fonts, A4, nothing below nine points. */
final class PageStyle {
  /** Contains none of the characters that markup would need escaped. */
  static final String CSS =
      """
      @page { size: A4; margin: 14mm 15mm 16mm 15mm; }
      html { background: #fff; color: #000; }
      body { font-family: system-ui, "Segoe UI", Roboto, "DejaVu Sans", Arial, sans-serif;
        font-size: 10pt; line-height: 1.35; max-width: 180mm; margin: 4mm auto;
        overflow-wrap: anywhere; }
      h1 { font-size: 15pt; line-height: 1.2; margin: 0 0 1mm 0; }
      h2 { font-size: 14pt; margin: 8mm 0 2mm 0; border-bottom: 0.5mm solid #000;
        break-after: avoid; page-break-after: avoid; }
      h3 { font-size: 11.5pt; margin: 5mm 0 1.5mm 0; break-after: avoid; page-break-after: avoid; }
      p { margin: 0 0 1.5mm 0; }
      ul, ol { margin: 0 0 2mm 0; padding-left: 6mm; }
      svg { max-width: 100%; height: auto; }
      .stage { break-before: page; page-break-before: always; }
      .facts { font-size: 9pt; }
      .answer { border: 0.9mm solid #000; padding: 3mm 4mm; margin: 4mm 0; }
      .sentence { font-size: 20pt; line-height: 1.2; font-weight: 700; margin: 0 0 2mm 0; }
      .first { font-size: 14pt; line-height: 1.25; margin: 0 0 2mm 0; }
      .mark svg { width: 5mm; height: 5mm; vertical-align: -0.8mm; }
      .sentence .mark svg { width: 8mm; height: 8mm; vertical-align: -1mm; }
      .drawing { margin: 0 0 4mm 0; break-inside: avoid; page-break-inside: avoid; }
      .answer .drawing { margin: 0; }
      .lead { font-size: 9pt; break-after: avoid; page-break-after: avoid; }
      .caption { font-size: 9pt; margin: 1mm 0 0 0; }
      .cause { margin: 0 0 3mm 0; break-inside: avoid; page-break-inside: avoid; }
      .cause p { margin: 0 0 0.8mm 0; }
      table { border-collapse: collapse; width: 100%; font-size: 9pt; margin: 0 0 3mm 0; }
      thead { display: table-header-group; }
      tbody { break-inside: avoid; page-break-inside: avoid; }
      th { text-align: left; vertical-align: bottom; border-bottom: 0.4mm solid #000;
        padding: 0.8mm 1.2mm; overflow-wrap: normal; }
      td { vertical-align: top; padding: 0.8mm 1.2mm; }
      tbody tr:first-child td { border-top: 0.2mm solid #000; }
      td.more { padding-left: 8mm; padding-bottom: 1.5mm; }
      .number { text-align: right; white-space: nowrap; }
      .name { font-weight: 700; }
      .what { width: 30%; }
      .mark { white-space: nowrap; }
      .verdict { white-space: nowrap; }
      .nonconforming { font-weight: 700; text-decoration: underline; }
      .caution { border-left: 1.5mm solid #000; padding-left: 3mm; break-inside: avoid;
        page-break-inside: avoid; }
      .signatures { break-inside: avoid; page-break-inside: avoid; }
      .signatures td { border-bottom: 0.3mm solid #000; height: 11mm; vertical-align: bottom;
        width: 25%; }
      .heads { font-family: ui-monospace, "DejaVu Sans Mono", Consolas, monospace;
        font-size: 9pt; }
      .ids td { font-size: 9pt; }
      .photo { display: inline-block; vertical-align: top; width: 84mm; margin: 1mm 3mm 3mm 0;
        break-inside: avoid; page-break-inside: avoid; }
      .photo img { max-width: 84mm; max-height: 84mm; border: 0.2mm solid #000; }
      @media screen { body { padding: 0 4mm; max-width: 188mm; } }
      """;

  private PageStyle() {}
}
