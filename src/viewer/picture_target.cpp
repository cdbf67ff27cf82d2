// A picture on the graphics card.
#include "picture_target.h"

#include <epoxy/gl.h>

namespace asperity {

PictureTarget::~PictureTarget() {
  if (frame_ == 0)
    return;
  glDeleteFramebuffers(1, &frame_);
  glDeleteTextures(1, &colour_);
  glDeleteRenderbuffers(1, &depth_);
}

bool PictureTarget::bind(PictureSize size) {
  if (frame_ == 0) {
    glGenFramebuffers(1, &frame_);
    glGenTextures(1, &colour_);
    glGenRenderbuffers(1, &depth_);
  }
  glBindFramebuffer(GL_FRAMEBUFFER, frame_);
  if (size.width_px != size_.width_px || size.height_px != size_.height_px) {
    size_ = size;
    glBindTexture(GL_TEXTURE_2D, colour_);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, size.width_px, size.height_px, 0, GL_RGBA, GL_UNSIGNED_BYTE,
                 nullptr);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, colour_, 0);
    glBindRenderbuffer(GL_RENDERBUFFER, depth_);
    glRenderbufferStorage(GL_RENDERBUFFER, GL_DEPTH_COMPONENT24, size.width_px, size.height_px);
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, depth_);
  }
  return glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE;
}

} // namespace asperity
