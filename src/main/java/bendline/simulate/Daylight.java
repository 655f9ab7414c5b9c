package bendline.simulate;

/**
 * Colours of a light.
 *
 * @param zenith sky overhead
 * @param horizon sky at the horizon
 * @param glow sky near the sun at the horizon
 * @param cloudLit sunny side of a cloud
 * @param cloudDark shaded side of a cloud
 * @param cover share of the sky under cloud, 0 to 1
 * @param haze colour that far things take on
 * @param hazeShare how much of it at the far shore, 0 to 1
 * @param sun strength of direct light against skylight, 0 to 1
 * @param level brightness of everything lit
 * @param warm tint of direct light
 */
record Daylight(
        int zenith,
        int horizon,
        int glow,
        int cloudLit,
        int cloudDark,
        double cover,
        int haze,
        double hazeShare,
        double sun,
        double level,
        int warm) {

    static Daylight of(SceneSpec.Light light) {
        return switch (light) {
            case SUN ->
                new Daylight(
                        0x4d83c0, 0xbdd3e3, 0xd6e2ea, 0xf6f6f4, 0xb4bcc6, 0.46, 0xa9bccb, 0.20, 0.55, 1.0, 0xfff4dc);
            case OVERCAST ->
                new Daylight(
                        0xa4adb5, 0xcfd4d7, 0xd8dbdc, 0xdfe2e4, 0x9aa3ab, 0.85, 0xb9c0c4, 0.26, 0.15, 0.86, 0xf2f4f6);
            case EVENING ->
                new Daylight(
                        0x5f7796, 0xe0b98e, 0xf3cf94, 0xf0cfae, 0x877d88, 0.42, 0xb99f86, 0.24, 0.45, 0.66, 0xffd9a0);
        };
    }

    /** A surface colour in this light; lit is 0 in full shade, 1 facing the sun. */
    int on(int colour, double lit) {
        // Under a grey sky hollows are still darker than what faces upwards.
        double contrast = 0.50 + 0.55 * sun;
        double f = level * (1 - 0.62 * contrast + 1.1 * contrast * lit);
        return Paint.lit(Paint.mix(colour, tinted(colour), sun * 0.5 * lit), f);
    }

    private int tinted(int c) {
        return (((c >> 16 & 255) * (warm >> 16 & 255) / 255) << 16)
                | (((c >> 8 & 255) * (warm >> 8 & 255) / 255) << 8)
                | ((c & 255) * (warm & 255) / 255);
    }
}
