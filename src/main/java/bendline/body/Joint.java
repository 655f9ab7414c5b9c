package bendline.body;

/** A place on the body that is followed. Left and right are the person's own. */
public enum Joint {
    NOSE("nose", 0),
    LEFT_SHOULDER("leftShoulder", 11),
    RIGHT_SHOULDER("rightShoulder", 12),
    LEFT_ELBOW("leftElbow", 13),
    RIGHT_ELBOW("rightElbow", 14),
    LEFT_WRIST("leftWrist", 15),
    RIGHT_WRIST("rightWrist", 16),
    LEFT_HIP("leftHip", 23),
    RIGHT_HIP("rightHip", 24),
    LEFT_KNEE("leftKnee", 25),
    RIGHT_KNEE("rightKnee", 26),
    LEFT_ANKLE("leftAnkle", 27),
    RIGHT_ANKLE("rightAnkle", 28);

    private final String id;
    private final int point;

    Joint(String id, int point) {
        this.id = id;
        this.point = point;
    }

    /** Name in files. */
    public String id() {
        return id;
    }

    /** Which of the network's points it is. */
    int point() {
        return point;
    }

    /** The same on the other side of the body; the nose is its own. */
    public Joint other() {
        return switch (this) {
            case NOSE -> NOSE;
            case LEFT_SHOULDER -> RIGHT_SHOULDER;
            case RIGHT_SHOULDER -> LEFT_SHOULDER;
            case LEFT_ELBOW -> RIGHT_ELBOW;
            case RIGHT_ELBOW -> LEFT_ELBOW;
            case LEFT_WRIST -> RIGHT_WRIST;
            case RIGHT_WRIST -> LEFT_WRIST;
            case LEFT_HIP -> RIGHT_HIP;
            case RIGHT_HIP -> LEFT_HIP;
            case LEFT_KNEE -> RIGHT_KNEE;
            case RIGHT_KNEE -> LEFT_KNEE;
            case LEFT_ANKLE -> RIGHT_ANKLE;
            case RIGHT_ANKLE -> LEFT_ANKLE;
        };
    }
}
