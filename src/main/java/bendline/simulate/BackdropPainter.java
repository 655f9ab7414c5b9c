package bendline.simulate;

/** Paints the still picture of a scene: sky, far shore, lake, bank and what stands on it. */
final class BackdropPainter {

    private final Scenario scenario;
    private final PhoneCamera camera;
    private final Daylight light;

    private BackdropPainter(Scenario scenario) {
        this.scenario = scenario;
        this.camera = new PhoneCamera(scenario);
        this.light = Daylight.of(scenario.scene().light());
    }

    static Backdrop paint(Scenario scenario, int margin) {
        return new BackdropPainter(scenario).paint(margin);
    }

    private Backdrop paint(int margin) {
        CameraSpec c = scenario.camera();
        Paint paint = new Paint(c.width(), c.height(), margin);
        long seed = scenario.seed();
        Shore shore = shore(seed);
        new SkyPainter(scenario, camera, light).paint(paint);
        farLand(paint, shore);
        trees(paint, seed, shore);
        new WaterPainter(paint, camera, light, shore, seed).paint();
        new BankPainter(paint, camera, light, shore, seed).paint(scenario.angler());
        BankThings things = new BankThings(scenario, paint, camera, light);
        things.mirrored();
        int[] bare = paint.rgb.clone();
        if (scenario.scene().tree()) {
            new BareTree(camera, light, -6.5, seed).paint(paint, camera.side() * -3.1, 7.5);
        }
        things.paint();
        stillWhereCovered(paint, bare);
        Lens.soften(paint);
        return new Backdrop(paint.width, paint.height, margin, paint.rgb, paint.water);
    }

    private Shore shore(long seed) {
        double far = switch (scenario.scene().bank()) {
            case OPEN -> -260;
            case TREES -> -85;
            case WOODS -> -38;
        };
        double fold = 2
                * (camera.scene(0, Shore.WATER_Y, far).y()
                        - camera.horizon(scenario.camera().width() / 2.0));
        return new Shore(camera.side(), far, fold, new Noise(seed + 71));
    }

    private void trees(Paint paint, long seed, Shore shore) {
        TreePainter trees = new TreePainter(paint, camera, light, seed);
        double haze = light.hazeShare();
        double z = shore.farZ();
        switch (scenario.scene().bank()) {
            case OPEN -> {
                trees.row(z - 250, 6, 16, Math.min(0.9, 3.0 * haze));
                trees.row(z, 0, 7, Math.min(0.8, 1.9 * haze));
            }
            case TREES -> {
                trees.row(z - 30, 3, 14, Math.min(0.8, 1.7 * haze));
                trees.row(z - 8, 0.5, 11, haze);
                trees.row(z, -0.2, 5, haze);
            }
            case WOODS -> {
                trees.row(z - 45, 12, 15, Math.min(0.8, 1.6 * haze));
                trees.row(z - 28, 7, 13, 1.2 * haze);
                trees.row(z - 14, 3, 11, 0.9 * haze);
                trees.row(z - 3, 0, 9, 0.6 * haze);
            }
        }
    }

    /** The strip between horizon and far waterline. */
    private void farLand(Paint paint, Shore shore) {
        int colour = Paint.mix(light.on(0x4a5836, 0.3), light.haze(), light.hazeShare());
        int strip = (int) Math.ceil(shore.foldPx()) + 2;
        for (int x = 0; x < paint.width; x++) {
            int top = (int) Math.floor(camera.horizon(x - paint.margin) + paint.margin) - 1;
            for (int y = Math.max(0, top); y < Math.min(paint.height, top + strip); y++) {
                paint.rgb[y * paint.width + x] = colour;
            }
        }
    }

    /** What stands before the water does not ripple. */
    private static void stillWhereCovered(Paint paint, int[] before) {
        for (int i = 0; i < before.length; i++) {
            if (paint.rgb[i] != before[i]) {
                paint.water[i] = 0;
            }
        }
    }
}
