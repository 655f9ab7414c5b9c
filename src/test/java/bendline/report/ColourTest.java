package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Contrast as defined by W3C, Web Content Accessibility Guidelines 2.2, success criteria 1.4.3 and 1.4.11. */
class ColourTest {

    private static final double TEXT = 4.5;
    private static final double DRAWING = 3;

    @Test
    void theFormulaGivesThePublishedExtremes() {
        // WCAG 2.2, definition of contrast ratio: black on white is 21:1, equal colours 1:1.
        assertThat(contrast("#000000", "#ffffff")).isEqualTo(21.0);
        assertThat(contrast("#777777", "#777777")).isEqualTo(1.0);
    }

    @Test
    void textAndDrawingsStandOutInLightDarkAndPrint() throws IOException {
        List<Map<String, String>> themes = themes();
        assertThat(themes).hasSize(3);
        for (Map<String, String> theme : themes) {
            for (String ground : List.of("paper", "sheet")) {
                for (String text : List.of("ink", "soft", "tip")) {
                    assertThat(contrast(theme.get(text), theme.get(ground)))
                            .as(text)
                            .isGreaterThanOrEqualTo(TEXT);
                }
                for (String line : List.of("blank", "tip", "rig")) {
                    assertThat(contrast(theme.get(line), theme.get(ground)))
                            .as(line)
                            .isGreaterThanOrEqualTo(DRAWING);
                }
            }
        }
    }

    @Test
    void chartFilesAndThePageShareTheLightColours() throws IOException {
        Map<String, String> light = themes().get(0);
        for (Palette p : Palette.values()) {
            assertThat(light.get(p.variable().replaceAll("var\\(--|\\)", ""))).isEqualTo(p.hex());
        }
    }

    @Test
    void noTextIsSmallerThanTwelvePixels() throws IOException {
        Matcher sizes =
                Pattern.compile("(?:font-size:|font:[^;]*?)\\s*([0-9.]+)rem").matcher(css());
        int found = 0;
        while (sizes.find()) {
            found++;
            assertThat(16 * Double.parseDouble(sizes.group(1))).isGreaterThanOrEqualTo(12);
        }
        assertThat(found).isGreaterThan(5);
        for (ChartSize size : ChartSize.values()) {
            double shown = size == ChartSize.NARROW ? 288 : 688;
            assertThat(size.font().getSize() * shown / size.width())
                    .as(size.id())
                    .isGreaterThanOrEqualTo(12);
        }
    }

    private static String css() throws IOException {
        try (InputStream in = ReportPage.class.getResourceAsStream("report.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** The variables of each {@code :root} block, in the order of the file. */
    private static List<Map<String, String>> themes() throws IOException {
        return Pattern.compile(":root \\{([^}]*)}")
                .matcher(css())
                .results()
                .map(block -> {
                    Map<String, String> out = new HashMap<>();
                    Matcher m = Pattern.compile("--([a-z]+): (#[0-9a-f]+);").matcher(block.group(1));
                    while (m.find()) {
                        String hex = m.group(2);
                        out.put(m.group(1), hex.length() == 4 ? hex.replaceAll("([0-9a-f])", "$1$1") : hex);
                    }
                    return out;
                })
                .toList();
    }

    private static double contrast(String a, String b) {
        double la = luminance(a);
        double lb = luminance(b);
        return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05);
    }

    private static double luminance(String hex) {
        int rgb = Integer.parseInt(hex.substring(1), 16);
        return 0.2126 * linear(rgb >> 16 & 0xff) + 0.7152 * linear(rgb >> 8 & 0xff) + 0.0722 * linear(rgb & 0xff);
    }

    private static double linear(int eightBit) {
        double c = eightBit / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }
}
