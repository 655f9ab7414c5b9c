package bendline.simulate;

/** Paints the still picture of a scene. */
final class BackdropPainter {

    private BackdropPainter() {}

    static Backdrop paint(Scenario scenario, int margin) {
        CameraSpec c = scenario.camera();
        PhoneCamera camera = new PhoneCamera(scenario);
        int w = c.width() + 2 * margin;
        int h = c.height() + 2 * margin;
        int[] rgb = new int[w * h];
        byte[] water = new byte[w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                double px = x - margin + 0.5;
                double py = y - margin + 0.5;
                double above = camera.horizon(px) - py;
                int i = y * w + x;
                if (above > 0) {
                    int v = (int) Math.max(0, 230 - above * 0.1);
                    rgb[i] = above < 60 ? 0x40563a : (v - 30) << 16 | v - 10 << 8 | 245;
                    continue;
                }
                double[] at = camera.ground(px, py, 0);
                boolean wet = at == null || at[0] * camera.side() > 1.2 || at[1] < -9;
                water[i] = (byte) (wet ? 1 : 0);
                rgb[i] = wet ? 0x7f93a0 : 0x5d7a3c;
            }
        }
        return new Backdrop(w, h, margin, rgb, water);
    }
}
