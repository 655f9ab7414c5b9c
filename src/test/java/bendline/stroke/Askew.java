package bendline.stroke;

import bendline.simulate.CameraSpec;
import bendline.simulate.Scenario;

/** The same scenario filmed from another side. */
final class Askew {

    private Askew() {}

    static Scenario from(Scenario s, double yawDeg) {
        CameraSpec c = s.camera();
        CameraSpec turned = new CameraSpec(
                c.width(),
                c.height(),
                c.rotationDegrees(),
                c.captureFps(),
                c.storedFps(),
                c.exposureSeconds(),
                c.focalPx(),
                c.distanceM(),
                c.heightM(),
                yawDeg,
                c.aimXM(),
                c.aimYM(),
                c.rollDeg(),
                c.shake(),
                c.noise(),
                c.gainDrift(),
                c.bitsPerSecond());
        return new Scenario(
                s.name(),
                s.seed(),
                s.seconds(),
                s.leftToRight(),
                s.angler(),
                s.statureM(),
                s.tipColour(),
                s.rod(),
                s.rig(),
                s.casts(),
                turned,
                s.scene());
    }
}
