// Shader programs made from the texts in shaders/.
#include "shader_library.h"

#include "packed_shaders.h"

#include <glm/gtc/type_ptr.hpp>

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <vector>

namespace asperity {

namespace {

void note(std::string &fault, std::string what) {
  if (fault.empty())
    fault = std::move(what);
}

std::string file_text(std::string_view file, std::string &fault) {
  if (const char *folder = std::getenv("ASPERITY_SHADERS")) {
    std::ifstream in(std::string(folder) + "/" + std::string(file));
    std::ostringstream text;
    if (in && text << in.rdbuf())
      return text.str();
  }
  for (const PackedShader &shader : packed_shaders())
    if (shader.file == file)
      return std::string(shader.text);
  note(fault, "there is no shader " + std::string(file));
  return {};
}

GLuint compiled(GLenum stage, const char *file, std::string &fault) {
  const std::string text = shader_text(file, fault);
  const char *source = text.c_str();
  const GLuint shader = glCreateShader(stage);
  glShaderSource(shader, 1, &source, nullptr);
  glCompileShader(shader);
  GLint is_fine = 0, length = 0;
  glGetShaderiv(shader, GL_COMPILE_STATUS, &is_fine);
  if (is_fine)
    return shader;
  glGetShaderiv(shader, GL_INFO_LOG_LENGTH, &length);
  std::string log(static_cast<std::size_t>(std::max(length, 1)), '\0');
  glGetShaderInfoLog(shader, length, nullptr, log.data());
  note(fault, "the shader " + std::string(file) + " does not compile: " + log.c_str());
  return shader;
}

} // namespace

std::string shader_text(std::string_view file, std::string &fault) {
  std::istringstream lines(file_text(file, fault));
  constexpr std::string_view kInclude = "#include \"";
  std::string text, line;
  while (std::getline(lines, line)) {
    if (line.starts_with(kInclude)) {
      const std::string name = line.substr(kInclude.size(), line.rfind('"') - kInclude.size());
      line = name == file ? std::string() : shader_text(name, fault);
    }
    text += line + '\n';
  }
  return text;
}

ShaderProgram::ShaderProgram(const char *vertex, const char *fragment, std::string &fault) {
  const GLuint first = compiled(GL_VERTEX_SHADER, vertex, fault);
  const GLuint second = compiled(GL_FRAGMENT_SHADER, fragment, fault);
  name_ = glCreateProgram();
  glAttachShader(name_, first);
  glAttachShader(name_, second);
  glLinkProgram(name_);
  glDeleteShader(first);
  glDeleteShader(second);
  GLint is_fine = 0;
  glGetProgramiv(name_, GL_LINK_STATUS, &is_fine);
  if (!is_fine) {
    char log[1024] = "";
    glGetProgramInfoLog(name_, sizeof log, nullptr, log);
    note(fault, std::string("the shaders ") + vertex + " and " + fragment + " do not go together: " + log);
  }
}

ShaderProgram::~ShaderProgram() { glDeleteProgram(name_); }

void ShaderProgram::set(const char *uniform, int value) const { glUniform1i(place_of(uniform), value); }

void ShaderProgram::set(const char *uniform, double value) const {
  glUniform1f(place_of(uniform), static_cast<float>(value));
}

void ShaderProgram::set(const char *uniform, Vec2 value) const {
  glUniform2f(place_of(uniform), static_cast<float>(value.x), static_cast<float>(value.y));
}

void ShaderProgram::set(const char *uniform, Vec3 value) const {
  glUniform3f(place_of(uniform), static_cast<float>(value.x), static_cast<float>(value.y),
              static_cast<float>(value.z));
}

void ShaderProgram::set(const char *uniform, const glm::dmat4 &value) const {
  const glm::mat4 single(value);
  glUniformMatrix4fv(place_of(uniform), 1, GL_FALSE, glm::value_ptr(single));
}

void ShaderProgram::set(const char *uniform, Rgb colour) const {
  glUniform3f(place_of(uniform), static_cast<float>(colour.r) / 255.0f, static_cast<float>(colour.g) / 255.0f,
              static_cast<float>(colour.b) / 255.0f);
}

void ShaderProgram::set(const char *uniform, Rgb colour, double alpha) const {
  glUniform4f(place_of(uniform), static_cast<float>(colour.r) / 255.0f, static_cast<float>(colour.g) / 255.0f,
              static_cast<float>(colour.b) / 255.0f, static_cast<float>(alpha));
}

void ShaderProgram::set_unsigned(const char *uniform, std::size_t value) const {
  glUniform1ui(place_of(uniform), static_cast<GLuint>(value));
}

void ShaderProgram::set_unsigned(const char *uniform, std::size_t x, std::size_t y) const {
  glUniform2ui(place_of(uniform), static_cast<GLuint>(x), static_cast<GLuint>(y));
}

} // namespace asperity
